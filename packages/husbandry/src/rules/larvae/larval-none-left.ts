import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { larvalNoneLeftDefinition } from '../../definitions/larvae/larval-none-left.ts'
import { defineRule, type RuleDraft } from '../../rule/rule.ts'
import { computedLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { batchNumbers, standingBatches } from '../../state/batch-state.ts'
import { bookLines } from '../../state/book-lines.ts'
import { noteField, numberField } from '../../task/fields.ts'
import { animals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf, textOf } from '../../task/values.ts'
import { youngWords } from '../../task/young.ts'

const ContextSchema = z.object({ batchId: z.string() })

export const larvalNoneLeft = defineRule(larvalNoneLeftDefinition, {
  draft: ({ snapshot, day, subject }) => {
    const tank = tankById(snapshot, subject.id)
    return emptyByBook(snapshot, tank, day).map((batch, index) =>
      draftFor(snapshot, { tank, batch, day, ordinal: index + 1 }),
    )
  },
  record: ({ context, values }) => {
    const { batchId } = ContextSchema.parse(context)
    const left = Math.round(numberOf(values, 'number') ?? 0)
    const note = textOf(values, 'note')
    return {
      facts: [
        { kind: 'count', subjectId: batchId, data: { of: 'larvae', animals: [left] } },
        ...(note ? [{ kind: 'observation' as const, subjectId: batchId, data: { note } }] : []),
      ],
    }
  },
})

/** Batches of a tank that are empty by their book, and that nobody has looked at since. */
const emptyByBook = (snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): SnapshotBatch[] =>
  standingBatches(snapshot).filter((batch) => {
    if (batch.tankId !== tank.id || batchNumbers(snapshot, batch).now !== 0) return false
    const last = bookLines(snapshot, batch.id).findLast(
      ({ at, of }) => at < day.endsAt && (of ?? 'larvae') === 'larvae',
    )
    return last !== undefined && last.way !== 'count'
  })

type Asked = { tank: SnapshotTank; batch: SnapshotBatch; day: HusbandryDay; ordinal: number }

function draftFor(
  snapshot: RoomSnapshot,
  { tank, batch, day, ordinal }: Asked,
): RuleDraft<z.infer<typeof ContextSchema>> {
  const young = youngWords(batch)
  const emptiedAt = bookLines(snapshot, batch.id).at(-1)?.at ?? day.startsAt
  const round =
    emptiedAt < day.startsAt ? firstRound(day) : (roundOfInstant(roundsInOrder(day), emptiedAt) ?? firstRound(day))
  return {
    roundId: round.id,
    ordinal,
    content: taskContent({
      verb: 'look',
      title: titled('look_for', {
        thing: `${young.name} of ${batch.name}`,
        details: [{ kind: 'because', words: ['by the book none are left'] }],
      }),
      steps: [
        phrase(
          `A torch along the surface, the corners and the bottom: ${young.name} that nobody counted starve unseen.`,
        ),
        phrase('Some are there? Write how many: their feeds come back to the list at once.'),
        phrase(`None? Write 0. ${tank.name} is then emptied, disinfected, rinsed and dried for the next.`),
      ],
      fields: [
        numberField({
          ...{ name: 'number', label: young.inIt, isRequired: true, unit: 'animals' },
          ...{ minimum: 0, maximum: 100_000, likely: [0, 50] as const },
        }),
        noteField(),
      ],
      because: [
        computedLink('hatched, moves, losses and counts', null, { label: 'larvae by the book', quantity: animals(0) }),
      ],
    }),
    context: { batchId: batch.id },
  }
}
