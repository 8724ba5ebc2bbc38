import type { FactEffects } from './effects.ts'

/** What hatched in a night: the clutch is over, and the book of the batch that the larvae went into begins, or grows. */
export const hatch: FactEffects<'hatch'> = {
  book: ({ subjectId, data }) => [{ subjectId: data.batchId ?? subjectId, way: 'begin', number: data.larvae ?? null }],
  clutchIs: 'hatched',
}
