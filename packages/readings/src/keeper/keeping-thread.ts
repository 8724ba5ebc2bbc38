import { Worker } from 'node:worker_threads'
import type pg from 'pg'
import { inBundles } from './in-bundles.ts'
import { type Fate, type Keeper, keepHere } from './keeper.ts'
import { type Asked, type AskedBundle, errorOf, type ToldBundle } from './told.ts'

/** The thread ended while it had a post: it was kept or was not. */
export class KeepingEnded extends Error {
  override name = 'KeepingEnded'
}

// What is smaller is kept sooner than it is handed over: some 250 readings. Measured beside each other.
const worthHandingOverBytes = 16 * 1024
// Posts of hundreds that come so soon one after the other wake the thread once and share a commit, which takes this thread and
// PostgreSQL less time than one for each; a device that sends thousands of old readings hardly feels it. Some four thousand
// readings wait for no others. Measured beside Today's list.
const bundling = { everyMs: 60, enough: 256 * 1024 }

type Waiting = { asked: Asked; resolve: (fate: Fate) => void; reject: (error: Error) => void }
type Keeping = {
  pool: pg.Pool
  connectionString: string
  /** Hears of a thread that ended by itself. */
  onEnd: (error: Error) => void
  /** The thread's program: beside this file once both are compiled. */
  program?: URL
}

/**
 * Keeps small posts at once and large ones in a thread with a connection of its own, so that whoever asks for something else
 * meanwhile does not wait until thousands of readings are read and written out. A thread that dies takes its posts with it,
 * none of them acknowledged, and the next gets a new one.
 */
export function keepLargeInThread(keeping: Keeping): Keeper {
  const here = keepHere(keeping.pool)
  const waiting = new Map<number, Waiting>()
  let worker: Worker | null = null
  let number = 0
  let isClosing = false

  const failAll = (cause: Error) => {
    const ended = new KeepingEnded('the thread that keeps readings has ended', { cause })
    keeping.onEnd(ended)
    for (const { reject } of waiting.values()) reject(ended)
    waiting.clear()
  }
  const start = (): Worker => {
    const { connectionString, program = new URL('./keeping-worker.js', import.meta.url) } = keeping
    // What the program itself was started with is none of the thread's business.
    const made = new Worker(program, { execArgv: [], workerData: { connectionString } })
    made.on('message', (bundle: ToldBundle) => {
      for (const { id, ...told } of bundle) {
        const who = waiting.get(id)
        waiting.delete(id)
        if ('error' in told) who?.reject(errorOf(told.error))
        else who?.resolve(told.fate)
      }
      // A program that waits for nothing is not kept open by a thread that might be asked again.
      if (waiting.size === 0) made.unref()
    })
    let cause: Error | undefined
    made.on('error', (error: Error) => {
      cause = error
    })
    made.on('exit', (code) => {
      worker = null
      // It was asked to end, and everybody has an answer.
      if (code === 0 && waiting.size === 0) return
      failAll(cause ?? new Error(`it ended with ${code}`))
    })
    return made
  }
  const pass = (bundle: readonly Waiting[]) => {
    for (const each of bundle) waiting.set(each.asked.id, each)
    const told = bundle.map(({ asked }) => asked) satisfies AskedBundle
    try {
      worker ??= start()
      worker.ref()
      // Handed over, not copied.
      worker.postMessage(
        told,
        told.map(({ sent }) => sent.bytes.buffer as ArrayBuffer),
      )
    } catch (error) {
      for (const { asked, reject } of bundle) if (waiting.delete(asked.id)) reject(error as Error)
    }
  }
  const bundles = inBundles<Waiting>({ ...bundling, pass })
  const ask = (task: Omit<Asked, 'id'>): Promise<Fate> =>
    new Promise((resolve, reject) => {
      number += 1
      const bytes = wholeOf(task.sent.bytes)
      const asked = { id: number, gauges: task.gauges, sent: { ...task.sent, bytes } }
      bundles.add({ asked, resolve, reject }, bytes.byteLength)
    })
  return {
    keep: (sent, gauges) =>
      isClosing || sent.bytes.byteLength < worthHandingOverBytes ? here.keep(sent, gauges) : ask({ sent, gauges }),
    close: async () => {
      isClosing = true
      bundles.passNow()
      const last = worker
      if (!last) return
      last.ref()
      const ended = new Promise((resolve) => last.once('exit', resolve))
      // What it has is kept first.
      last.postMessage(null satisfies AskedBundle)
      await ended
    },
  }
}

/** Bytes with a memory of their own: a view into a shared one would take its neighbours along. */
const wholeOf = (bytes: Uint8Array): Uint8Array =>
  bytes.byteLength === bytes.buffer.byteLength ? bytes : Uint8Array.from(bytes)
