import { parentPort } from 'node:worker_threads'
import type { FoodAnswer, FoodChange, FoodWhatIf } from '@fryward/shared'
import { answerFood, answerWhatIf, type FoodJob } from './answer-food.ts'

/** `changes` of a what-if; null for a room's own plan with its cures. */
export type FoodTask = { id: number; job: FoodJob; changes: FoodChange[] | null }
export type FoodTold = { id: number } & ({ answer: FoodAnswer | FoodWhatIf } | { error: string })

const port = parentPort
let last: Promise<void> = Promise.resolve()

port?.on('message', (task: FoodTask) => {
  last = last.then(() => work(task))
})

async function work({ id, job, changes }: FoodTask): Promise<void> {
  const tell = (told: FoodTold) => port?.postMessage(told)
  try {
    tell({ id, answer: changes ? await answerWhatIf(job, changes) : await answerFood(job) })
  } catch (error) {
    tell({ id, error: error instanceof Error ? (error.stack ?? error.message) : String(error) })
  }
}
