import { Worker } from 'node:worker_threads'
import type { FoodAnswer, FoodWhatIf } from '@fryward/shared'
import { RoomError } from '../errors.ts'
import type { FoodThinker } from './food-thinker.ts'
import type { FoodTask, FoodTold } from './food-worker.ts'

// A plan takes a second or so: whoever came later than these would have given up. common practice
const mostWaiting = 20

type Waiting = { resolve: (answer: never) => void; reject: (error: Error) => void }

/**
 * Works out food in a thread of its own, one job after the other, so that nothing else waits for it. A thread that dies
 * takes its jobs with it, and the next job gets a new one; one that is closed takes them with it too, and gets no more.
 */
export function foodThread(): FoodThinker {
  const waiting = new Map<number, Waiting>()
  let worker: Worker | null = null
  let asked = 0
  let isClosed = false

  const failAll = (error: Error) => {
    worker = null
    for (const { reject } of waiting.values()) reject(error)
    waiting.clear()
  }
  const start = (): Worker => {
    // Beside this file once both are compiled. What the program itself was started with is none of the thread's business.
    const made = new Worker(new URL('./food-worker.js', import.meta.url), { execArgv: [] })
    made.on('message', ({ id, ...told }: FoodTold) => {
      const who = waiting.get(id)
      waiting.delete(id)
      // A program that waits for nothing is not kept open by a thread that might be asked again.
      if (waiting.size === 0) made.unref()
      if ('error' in told) who?.reject(new Error(told.error))
      else who?.resolve(told.answer as never)
    })
    made.on('error', failAll)
    made.on('exit', () => {
      if (worker === made) failAll(new Error('the thread that works out food has ended'))
    })
    return made
  }
  const ask = <T>(task: Omit<FoodTask, 'id'>): Promise<T> =>
    new Promise((resolve, reject) => {
      if (isClosed) throw closing()
      if (waiting.size >= mostWaiting) throw busy()
      asked += 1
      worker ??= start()
      worker.ref()
      waiting.set(asked, { resolve, reject })
      worker.postMessage({ ...task, id: asked })
    })
  return {
    answer: (job) => ask<FoodAnswer>({ job, changes: null }),
    whatIf: (job, changes) => ask<FoodWhatIf>({ job, changes: [...changes] }),
    close: async () => {
      isClosed = true
      const last = worker
      failAll(closing())
      await last?.terminate()
    },
  }
}

const closing = () => new RoomError('unavailable', 'This server is being stopped. Ask again in a moment.')
const busy = () => new RoomError('busy', 'Many questions about food are being worked out. Ask again in a moment.')
