// The built dashboard on an inner port, as `npm start` runs it. Plain JavaScript: the screenshot script and the benches
// use it too, without a compiler.
import { fork } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { findFreePort } from '@fryward/standalone'
import { root } from '../../apps/standalone/build/project.mjs'

/**
 * Serves a copy of the dashboard's build, so that a build made meanwhile pulls no page away.
 * @returns {Promise<{url: string, stop: () => Promise<void>}>}
 */
export async function startDashboard() {
  const output = join(root, 'tests/.output')
  mkdirSync(output, { recursive: true })
  const folder = mkdtempSync(join(output, 'dashboard-'))
  for (const name of ['package.json', 'next.config.mjs']) cpSync(join(root, 'apps/web', name), join(folder, name))
  const cache = join(root, 'apps/web/.next/cache')
  cpSync(join(root, 'apps/web/.next'), join(folder, '.next'), { recursive: true, filter: (path) => path !== cache })
  const served = await serveNext(folder)
  return {
    url: served.url,
    stop: async () => {
      await served.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/**
 * Serves the Next build in a folder.
 * @param {string} folder
 * @returns {Promise<{url: string, stop: () => Promise<void>}>}
 */
export async function serveNext(folder) {
  const env = { ...process.env, WEB_DIR: folder, WEB_PORT: String(await findFreePort()), NODE_ENV: 'production' }
  const child = fork(join(root, 'apps/standalone/dist/parts/web-server.js'), {
    env: { ...env, NEXT_TELEMETRY_DISABLED: '1', NODE_OPTIONS: '' },
    execArgv: ['--import', join(root, 'apps/standalone/dist/parts/under-supervision.js')],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  const ended = new Promise((resolve) => child.once('exit', resolve))
  const url = await new Promise((resolve, reject) => {
    child.once('message', (message) => resolve(message.url))
    child.once('exit', (code) => reject(new Error(`The pages of ${folder} ended (${code}) before they were up`)))
  })
  return {
    url,
    stop: async () => {
      child.kill('SIGTERM')
      await ended
    },
  }
}
