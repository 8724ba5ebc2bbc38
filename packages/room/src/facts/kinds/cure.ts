import { invalid } from '../../errors.ts'
import { findCard } from '../../frame/directory.ts'
import { assertNamed, type DraftOf, type KindRules } from './kind-rules.ts'

/** What the room chose so that food lasts: of things that are there, and from a culture that can hold so many. */
export const cure: KindRules<'cure'> = {
  about: ['room'],
  assertFits: async (work, { data: { change } }: DraftOf<'cure'>) => {
    if (change.kind === 'keep_larvae') {
      const subject = await findCard(work, change.subjectId)
      if (subject?.kind !== 'clutch' && subject?.kind !== 'larval_batch')
        throw invalid(
          'data.change.subjectId',
          'There is no such clutch or larval batch in this room.',
          change.subjectId,
        )
    }
    if (change.kind !== 'start_culture') return
    await assertNamed(work, { id: change.cultureId, kind: 'culture', path: 'data.change.cultureId' })
    const from = await work.tx.culture.findUnique({
      where: { roomId_id: { roomId: work.roomId, id: change.cultureId } },
      select: { kind: true },
    })
    if (from?.kind !== 'rotifer')
      throw invalid('data.change.cultureId', 'Only a rotifer culture starts another of rotifers.', change.cultureId)
    if (change.animals > change.volumeL * mostPerL)
      throw invalid(
        'data.change.animals',
        `${change.volumeL} L hold at most ${change.volumeL * mostPerL} rotifers; start a larger vessel or with fewer.`,
        change.animals,
      )
  },
}

// Denser than 10,000 per mL no vessel of a small room is kept (super-intensive systems: Yoshimura et al. 2003). from memory
const mostPerL = 10_000 * 1000
