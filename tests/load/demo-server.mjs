// The demo room behind the real API and the built dashboard, as processes of their own, for screenshots and benches.
import { fork, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findFreePort, startEmbeddedPostgres } from '@fryward/standalone'
import { applyMigrations } from '@fryward/store'
import { root } from '../../apps/standalone/build/project.mjs'
import { startDashboard } from '../support/stage-dashboard.mjs'

/**
 * @param {{timeZone?: string}} [options] where the demo room is; where the machine is without.
 * @returns {Promise<{origin: string, roomId: string, people: {role: string, email: string, password: string}[],
 *   connectionString: string, stop: () => Promise<void>}>}
 */
export async function startDemoServer({ timeZone } = {}) {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-demo-'))
  chmodSync(dataDir, 0o755)
  const stops = [() => rmSync(dataDir, { recursive: true, force: true })]
  const stop = async () => {
    for (const end of stops.reverse()) await end()
  }
  try {
    const postgres = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: 60 })
    stops.push(() => postgres.stop())
    const { connectionString } = postgres
    await applyMigrations({ connectionString })
    const demo = await seed(connectionString, timeZone)
    const dashboard = await startDashboard()
    stops.push(() => dashboard.stop())
    const env = { ...process.env, DATABASE_URL: connectionString, WEB_URL: dashboard.url, LOG_LEVEL: 'silent' }
    const api = await startApi({
      ...env,
      PORT: String(await findFreePort()),
      HOST: '127.0.0.1',
      DATA_DIR: dataDir,
      AUTH_SECRET: 'x'.repeat(40),
      REQUESTS_PER_MINUTE: '100000000',
    })
    stops.push(api.stop)
    return { origin: api.url, ...demo, connectionString, stop }
  } catch (thrown) {
    await stop()
    throw thrown
  }
}

export function seed(connectionString, timeZone) {
  const child = spawn(process.execPath, [join(root, 'prisma/demo/seed.mjs')], {
    env: { ...process.env, DATABASE_URL: connectionString, ...(timeZone ? { DEMO_TIME_ZONE: timeZone } : {}) },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let text = ''
  child.stdout.on('data', (chunk) => {
    text += chunk
  })
  return new Promise((resolve, reject) => {
    child.on('exit', (code) =>
      code === 0
        ? resolve(JSON.parse(text.trim().split('\n').at(-1)))
        : reject(new Error(`The demo room was not built (exit ${code})`)),
    )
  })
}

async function startApi(env) {
  const child = fork(join(root, 'apps/api/packed/main.js'), {
    env,
    execArgv: ['--import', join(root, 'apps/standalone/dist/parts/under-supervision.js')],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  const ended = new Promise((resolve) => child.once('exit', resolve))
  const url = await new Promise((resolve, reject) => {
    child.on('message', (message) => message.ready && resolve(message.url))
    child.once('exit', (code) => reject(new Error(`The API ended (${code}) before it was up`)))
  })
  const stop = async () => {
    child.kill('SIGTERM')
    await ended
  }
  return { url, stop }
}

/** Signs somebody in, and returns the session as a cookie header. */
export async function signIn(origin, { email, password }) {
  const answer = await fetch(`${origin}/api/auth/sign-in/email`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin },
    body: JSON.stringify({ email, password }),
  })
  if (!answer.ok) throw new Error(`The sign-in was refused: ${answer.status} ${await answer.text()}`)
  const [cookie] = answer.headers.getSetCookie()
  return cookie.split(';')[0]
}
