import { RestartCount } from '../parts/restart-count.ts'
import { messageOf } from '../start-problem.ts'
import { type EmbeddedPostgres, startEmbeddedPostgres } from './embedded-server.ts'
import { isAlive } from './postmaster-file.ts'
import { turnOverLog } from './server-log.ts'

export type KeepRunning = {
  server: EmbeddedPostgres
  dataDir: string
  log: (sentence: string) => void
}

const LOOK_EVERY_MS = 1000

/**
 * Starts the embedded server again, on its old port, when it dies under us, and keeps its log from filling the disk. The
 * parts' pools connect again by themselves. Returns what ends the watch.
 */
export function keepPostgresRunning({ server, dataDir, log }: KeepRunning): () => Promise<void> {
  const restarts = new RestartCount()
  let pid = server.pid
  let startedAt = Date.now()
  let restartAt = 0
  let busy: Promise<void> | undefined
  const revive = async () => {
    try {
      pid = (await startEmbeddedPostgres({ dataDir, port: server.port })).pid
      startedAt = Date.now()
    } catch (thrown) {
      log(`${messageOf(thrown)} Trying again.`)
      restartAt = Date.now() + restarts.next(0)
    }
  }
  const look = () => {
    if (busy !== undefined) return
    if (isAlive(pid)) {
      restartAt = 0
      turnOverLog(server.logFile)
      return
    }
    if (restartAt === 0) {
      log('PostgreSQL ended by itself; starting it again.')
      restartAt = Date.now() + restarts.next(Date.now() - startedAt)
    }
    if (Date.now() < restartAt) return
    busy = revive().finally(() => {
      busy = undefined
    })
  }
  const timer = setInterval(look, LOOK_EVERY_MS)
  return async () => {
    clearInterval(timer)
    await busy
  }
}
