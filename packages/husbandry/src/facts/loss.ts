import type { FactEffects } from './effects.ts'

/** Animals found dead or gone: out of the book. */
export const loss: FactEffects<'loss'> = {
  book: ({ subjectId, data }) => [{ subjectId, way: 'out', number: data.number }],
}
