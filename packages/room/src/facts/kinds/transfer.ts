import type { SubjectKind } from '@fryward/shared'
import { invalid } from '../../errors.ts'
import { findCard } from '../../frame/directory.ts'
import { assertNamed, type KindRules, words } from './kind-rules.ts'

/** Where animals may move to. */
const homes: readonly SubjectKind[] = ['tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group']

/** Animals arrive where animals live, and a move within one thing is none. */
export const transfer: KindRules<'transfer'> = {
  about: ['clutch', 'larval_batch', 'juvenile_group'],
  assertFits: async (work, { subjectId, data: { toSubjectId } }) => {
    await assertNamed(work, { id: toSubjectId, path: 'data.toSubjectId' })
    const destination = await findCard(work, toSubjectId)
    if (toSubjectId === subjectId || !destination || !homes.includes(destination.kind))
      throw invalid(
        'data.toSubjectId',
        `Animals move to another ${homes.map(words).join(' or ')}; ${destination?.name ?? 'this'} is none.`,
        toSubjectId,
      )
  },
  book: { departs: true, arrivesAt: 'toSubjectId' },
}
