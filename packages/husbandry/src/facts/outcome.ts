import type { FactEffects } from './effects.ts'

/** Fish placed, kept for breeding or culled: out of the book, and not lost. */
export const outcome: FactEffects<'outcome'> = {
  book: ({ subjectId, data }) => [{ subjectId, way: 'out', number: data.number }],
}
