import { parentPort, workerData } from 'node:worker_threads'
import pg from 'pg'
import { keepHere } from './keeper.ts'
import { type Asked, type Told, toldError } from './told.ts'

// Commits come one after the other.
const pool = new pg.Pool({ ...(workerData as { connectionString: string }), max: 1 })
// One that the server drops is replaced at the next statement; without a listener it would end the thread.
pool.on('error', () => undefined)
pool.on('connect', (client) => client.on('error', () => undefined))
// Posts of hundreds that come so soon one after the other share a commit, which takes PostgreSQL less time than one for each; a
// device that sends thousands of old readings hardly feels it. Measured beside Today's list.
const companyMs = 30
const keeper = keepHere(pool, { companyMs })
const port = parentPort
const work = new Set<Promise<void>>()

port?.on('message', (asked: Asked) => {
  if (asked === null) return void end()
  const kept = keep(asked).finally(() => work.delete(kept))
  work.add(kept)
})

async function keep({ id, sent, gauges }: NonNullable<Asked>): Promise<void> {
  const tell = (told: Told) => port?.postMessage(told)
  try {
    tell({ id, fate: await keeper.keep(sent, gauges) })
  } catch (error) {
    tell({ id, error: toldError(error) })
  }
}

async function end(): Promise<void> {
  await Promise.all(work)
  await pool.end()
  port?.close()
}
