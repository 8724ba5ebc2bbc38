// The demo room behind the real API as a process of its own, for benches that need no pages.
import { fork } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startEmbeddedPostgres } from '@fryward/standalone'
import { applyMigrations } from '@fryward/store'
import { seed, signIn } from './demo-server.mjs'

const root = join(import.meta.dirname, '../..')

/**
 * @param {{isDurable?: boolean, settings?: Record<string, string>}} [options] whether a commit is on disk when it is
 *   answered, and settings of the API.
 */
export async function startDemoApi({ isDurable = false, settings = {} } = {}) {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-bench-'))
  chmodSync(dataDir, 0o755)
  const postgres = await startEmbeddedPostgres({ dataDir, isDurable, maxConnections: 60 })
  const children = []
  const stop = async () => {
    for (const child of children) child.kill('SIGTERM')
    await postgres.stop()
    rmSync(dataDir, { recursive: true, force: true })
  }
  try {
    const { connectionString } = postgres
    await applyMigrations({ connectionString })
    console.log('Building the demo room')
    const demo = await seed(connectionString)
    const environment = {
      ...process.env,
      ...{ DATABASE_URL: connectionString, PORT: '0', HOST: '127.0.0.1', LOG_LEVEL: 'silent' },
      ...{ AUTH_SECRET: 'x'.repeat(40), REQUESTS_PER_MINUTE: '100000000', ...settings },
    }
    const run = (module, more = {}) => startProgram(module, { ...environment, ...more }, children)
    const api = await run(join(root, 'apps/api/packed/main.js'))
    const cookieOf = (role) =>
      signIn(
        api.url,
        demo.people.find((person) => person.role === role),
      )
    return { api, postgres, demo, connectionString, run, cookieOf, stop }
  } catch (thrown) {
    await stop()
    throw thrown
  }
}

function startProgram(module, env, children) {
  const child = fork(module, { env, stdio: ['ignore', 'ignore', 'inherit', 'ipc'] })
  children.push(child)
  return new Promise((resolve, reject) => {
    child.on('message', (message) => message.ready && resolve({ url: message.url, pid: child.pid }))
    child.on('exit', (code) => reject(new Error(`${module} ended with ${code}`)))
  })
}
