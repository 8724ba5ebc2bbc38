import { assertNamed, type KindRules } from './kind-rules.ts'

/** Animals put into a culture, bought in or from another of this room. */
export const inoculation: KindRules<'inoculation'> = {
  about: ['culture'],
  assertFits: async (work, { data: { fromCultureId } }) => {
    if (fromCultureId !== undefined)
      await assertNamed(work, { id: fromCultureId, kind: 'culture', path: 'data.fromCultureId' })
  },
}
