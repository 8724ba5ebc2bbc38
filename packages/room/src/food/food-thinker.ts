import { createHash } from 'node:crypto'
import type { FoodAnswer, FoodChange, FoodWhatIf } from '@fryward/shared'
import { answerFood, answerWhatIf, type FoodJob } from './answer-food.ts'

/** Who works out a room's food: here, or in a thread of its own (`foodThread`). */
export type FoodThinker = {
  answer: (job: FoodJob) => Promise<FoodAnswer>
  whatIf: (job: FoodJob, changes: readonly FoodChange[]) => Promise<FoodWhatIf>
  close: () => Promise<void>
}

/** In the thread that asks, which is held up meanwhile. */
export const thinkHere: FoodThinker = { answer: answerFood, whatIf: answerWhatIf, close: async () => undefined }

/** Two jobs with one mark have one answer. */
export const markOf = (job: FoodJob): string => createHash('sha256').update(JSON.stringify(job)).digest('base64url')
