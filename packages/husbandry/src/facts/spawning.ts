import type { FactEffects } from './effects.ts'

/** Eggs laid: a clutch stands on it, and its book begins. */
export const spawning: FactEffects<'spawning'> = {
  book: ({ subjectId, data }) => [{ subjectId, way: 'begin', number: data.eggs ?? null }],
  clutchIs: 'laid',
}
