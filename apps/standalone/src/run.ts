import { join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import { announce } from './announce.ts'
import { prepareDataFolder } from './data-folder.ts'
import { type InstallationDatabase, migrate, openInstallationDatabase } from './database.ts'
import { ensureDemoRoom } from './demo-room.ts'
import { assertPortIsFree } from './front-port.ts'
import { waitForHealth } from './health.ts'
import { lockDataFolder } from './instance-lock.ts'
import { partEnvironments } from './parts/environments.ts'
import { Part } from './parts/part.ts'
import { keepTrouble } from './parts/troubles.ts'
import { findFreePort } from './postgres/embedded-server.ts'
import { keepPostgresRunning } from './postgres/keep-running.ts'
import type { Settings } from './settings.ts'
import { StartProblem } from './start-problem.ts'
import { prepareTls } from './tls/prepare-tls.ts'
import { watchBuilds } from './watch-builds.ts'

export type RunOptions = {
  settings: Settings
  /** The project's folder: parts and pages are found from it. */
  root: string
  isDevelopment: boolean
  log: (sentence: string) => void
  /** Aborted when the person wants it to end; everything started is then stopped in order. */
  signal: AbortSignal
}

const READY_LIMIT_MS = 120_000
// A part whose parent was killed gives itself three seconds to end.
const LEFT_BEHIND_PATIENCE_MS = 15_000

/**
 * Runs one installation until `signal` aborts; what ends by itself is started again. Whatever was started is stopped, last first, before
 * this returns or throws. Throws StartProblem for what the person can put right.
 */
export async function run(options: RunOptions): Promise<void> {
  const { settings, log, signal } = options
  const undo: Array<() => Promise<void> | void> = []
  try {
    prepareDataFolder(settings.DATA_DIR)
    const lock = lockDataFolder(settings.DATA_DIR)
    undo.push(() => lock.release())
    const front = { host: settings.HOST, port: settings.PORT }
    await assertPortIsFree(front, lock.wasLeftBehind ? LEFT_BEHIND_PATIENCE_MS : 0)
    log(settings.DATABASE_URL === undefined ? 'Starting PostgreSQL' : 'Connecting to the database')
    const database = await openInstallationDatabase(settings)
    undo.push(() => database.embedded?.stop())
    signal.throwIfAborted()
    await migrate(database.connectionString, log)
    signal.throwIfAborted()
    await serve({ ...options, database, undo })
  } catch (thrown) {
    if (!signal.aborted) throw thrown
  } finally {
    if (signal.aborted) log('Stopping')
    for (const step of undo.reverse()) await step()
  }
}

type ServeOptions = RunOptions & { database: InstallationDatabase; undo: Array<() => Promise<void> | void> }

async function serve(options: ServeOptions): Promise<void> {
  const { settings, root, isDevelopment, database, undo, log, signal } = options
  const tls = await prepareTls(settings)
  const webPort = await findFreePort()
  const environments = partEnvironments({
    settings,
    connectionString: database.connectionString,
    tls,
    webPort,
    isDevelopment,
    root,
  })
  const seedModule = join(root, 'prisma/demo/seed.mjs')
  const demo = await ensureDemoRoom({ settings, database, seedModule, environment: environments.demo, log, signal })
  signal.throwIfAborted()

  const tellTrouble = (part: string) => (sentence: string) => {
    log(sentence)
    keepTrouble(settings.DATA_DIR, { part, at: new Date().toISOString(), sentence })
  }
  let claimCode: string | undefined
  const makePart = (name: string, modulePath: string, key: 'web' | 'api' | 'scheduler') =>
    new Part({
      name,
      modulePath: join(root, modulePath),
      environment: environments[key],
      logFile: join(settings.DATA_DIR, 'logs', `${key}.log`),
      onClaimCode: (code) => {
        claimCode = code
      },
      onRestart: tellTrouble(name),
    })
  const web = makePart('dashboard', 'apps/standalone/dist/parts/web-server.js', 'web')
  // While it is worked on, what the compiler writes file by file; else the packed ones, which are there in half of the time.
  const made = isDevelopment ? 'dist' : 'packed'
  const api = makePart('API', `apps/api/${made}/main.js`, 'api')
  const scheduler = makePart('scheduler', `apps/scheduler/${made}/main.js`, 'scheduler')
  for (const part of [web, scheduler, api]) undo.push(() => part.stop()) // undone last first: the front door closes first

  log('Starting the API, the scheduler and the dashboard')
  await Promise.all([web, api, scheduler].map((part) => startInTime(part, signal)))
  await waitForHealth({ host: settings.HOST, port: settings.PORT, isHttps: tls !== undefined, signal })
  if (database.embedded !== undefined) {
    undo.push(
      keepPostgresRunning({ server: database.embedded, dataDir: settings.DATA_DIR, log: tellTrouble('PostgreSQL') }),
    )
  }
  if (isDevelopment) undo.push(watchBuilds({ root, parts: { api, scheduler }, log }))
  announce({ settings, isHttps: tls !== undefined, authorityFile: tls?.authorityFile, demo, claimCode, log })
  await aborted(signal)
}

async function startInTime(part: Part, signal: AbortSignal): Promise<void> {
  const late = delay(READY_LIMIT_MS, undefined, { signal, ref: false }).then(() => {
    throw new StartProblem(
      `A part was not ready after ${READY_LIMIT_MS / 1000} s; the logs in the data folder say why.`,
    )
  })
  const start = part.start().catch((cause: Error) => {
    throw new StartProblem(cause.message, { cause })
  })
  await Promise.race([start, late])
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve()
    else signal.addEventListener('abort', () => resolve(), { once: true })
  })
}
