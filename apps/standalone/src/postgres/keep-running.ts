import { messageOf, StartProblem } from '../start-problem.ts'
import { type EmbeddedPostgres, startEmbeddedPostgres } from './embedded-server.ts'
import { isAlive } from './postmaster-file.ts'

export type KeepRunning = {
  server: EmbeddedPostgres
  dataDir: string
  log: (sentence: string) => void
  onGiveUp: (problem: StartProblem) => void
}

const LOOK_EVERY_MS = 1000
const RESTART_LIMIT = 5

/**
 * Starts the embedded server again, on its old port, when it dies under us: the parts' pools connect again by themselves.
 * Returns what ends the watch.
 */
export function keepPostgresRunning({ server, dataDir, log, onGiveUp }: KeepRunning): () => Promise<void> {
  let restarts = 0
  let pid = server.pid
  let busy: Promise<void> | undefined
  const revive = async () => {
    if (restarts >= RESTART_LIMIT) {
      onGiveUp(new StartProblem(`PostgreSQL ended by itself ${restarts + 1} times; its log is ${server.logFile}.`))
      return
    }
    restarts += 1
    log('PostgreSQL ended by itself; starting it again.')
    try {
      pid = (await startEmbeddedPostgres({ dataDir, port: server.port })).pid
    } catch (thrown) {
      onGiveUp(new StartProblem(messageOf(thrown), { cause: thrown }))
    }
  }
  const timer = setInterval(() => {
    if (busy !== undefined || isAlive(pid)) return
    busy = revive().finally(() => {
      busy = undefined
    })
  }, LOOK_EVERY_MS)
  return async () => {
    clearInterval(timer)
    await busy
  }
}
