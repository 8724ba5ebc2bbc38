import { invalid } from '../../errors.ts'
import { hasBottle } from '../../frame/directory.ts'
import { assertNamed, type KindRules } from './kind-rules.ts'

/** What was fed, out of a culture or a bottle of this room. */
export const feeding: KindRules<'feeding'> = {
  about: ['culture', 'pair', 'larval_batch', 'juvenile_group', 'tank'],
  assertFits: async (work, { data: { fromCultureId, concentrateId } }) => {
    if (fromCultureId !== undefined)
      await assertNamed(work, { id: fromCultureId, kind: 'culture', path: 'data.fromCultureId' })
    if (concentrateId !== undefined && !(await hasBottle(work, concentrateId)))
      throw invalid('data.concentrateId', 'There is no such bottle of concentrate in this room.', concentrateId)
  },
}
