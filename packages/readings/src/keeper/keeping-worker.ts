import { parentPort, workerData } from 'node:worker_threads'
import pg from 'pg'
import { inBundles } from './in-bundles.ts'
import { keepHere } from './keeper.ts'
import { type Asked, type AskedBundle, type Told, type ToldBundle, toldError } from './told.ts'

// Commits come one after the other.
const pool = new pg.Pool({ ...(workerData as { connectionString: string }), max: 1 })
// One that the server drops is replaced at the next statement; without a listener it would end the thread.
pool.on('error', () => undefined)
pool.on('connect', (client) => client.on('error', () => undefined))
const keeper = keepHere(pool)
const port = parentPort
const work = new Set<Promise<void>>()

// Posts of one commit are answered together.
const answers = inBundles<Told>({ pass: (bundle: ToldBundle) => port?.postMessage(bundle) })

port?.on('message', (bundle: AskedBundle) => {
  if (bundle === null) return void end()
  for (const asked of bundle) {
    const kept = keep(asked).finally(() => work.delete(kept))
    work.add(kept)
  }
})

async function keep({ id, sent, gauges }: Asked): Promise<void> {
  try {
    answers.add({ id, fate: await keeper.keep(sent, gauges) })
  } catch (error) {
    answers.add({ id, error: toldError(error) })
  }
}

async function end(): Promise<void> {
  await Promise.all(work)
  answers.passNow()
  await pool.end()
  port?.close()
}
