import { isSame } from '@fryward/husbandry'
import { invalid } from '../../errors.ts'
import { findCard } from '../../frame/directory.ts'
import type { KindRules } from './kind-rules.ts'

/** Water out and in: some of it, and at once no more than the vessel holds. */
export const waterChange: KindRules<'water_change'> = {
  about: ['culture', 'tank', 'larval_batch'],
  assertFits: async (work, { subjectId, data: { removedL, addedL } }) => {
    const volumeL = (await findCard(work, subjectId))?.volumeL ?? null
    if (volumeL !== null && Math.max(removedL, addedL) > volumeL + 1e-9)
      throw invalid(
        'data.removedL',
        `The vessel holds ${volumeL} L; more than that cannot be taken out or put in at once. Record a larger change as several.`,
      )
    if (isSame([removedL, addedL], [0, 0]))
      throw invalid('data.addedL', 'Water was taken out or put in: say how many litres.')
  },
}
