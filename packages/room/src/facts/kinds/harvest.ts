import { invalid } from '../../errors.ts'
import { findCard } from '../../frame/directory.ts'
import { assertNamed, type KindRules } from './kind-rules.ts'

/** Litres out of a culture: no more than it holds, and each part to something that is there. */
export const harvest: KindRules<'harvest'> = {
  about: ['culture'],
  assertFits: async (work, { subjectId, data }) => {
    const culture = await findCard(work, subjectId)
    if (culture?.volumeL != null && data.volumeL > culture.volumeL + 1e-9)
      throw invalid(
        'data.volumeL',
        `${culture.name} holds ${culture.volumeL} L; ${data.volumeL} L cannot come out of it.`,
        data.volumeL,
      )
    for (const { subjectId: id, to } of data.parts)
      if (id !== undefined)
        await assertNamed(work, { id, kind: to === 'culture' ? 'culture' : 'larval_batch', path: 'data.parts' })
  },
}
