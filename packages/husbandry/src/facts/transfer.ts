import type { FactEffects } from './effects.ts'

/** Animals that leave one thing and arrive at another: out of one book and into the other. */
export const transfer: FactEffects<'transfer'> = {
  book: ({ subjectId, data }) => [
    { subjectId, way: 'out', number: data.number },
    { subjectId: data.toSubjectId, way: 'in', number: data.number },
  ],
  clutchIs: 'moved',
}
