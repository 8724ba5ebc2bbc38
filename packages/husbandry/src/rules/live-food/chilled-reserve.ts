import { chilledReserve } from '@fryward/live-feed'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { chilledReserveDefinition } from '../../definitions/live-food/chilled-reserve.ts'
import type { FactOf } from '../../facts/fact.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { dateOf, daysSince, factsUntil } from '../../state/day-facts.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { litres, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'

const ContextSchema = z.object({ litres: z.number() })
// Survival at 4 C is followed to 60 days at most (survival in the cold).
const oldestKnownDays = 60

/** Litres of a harvest that went into the cold. */
const chilledL = (fact: FactOf<'harvest'>): number =>
  fact.data.parts.filter(({ to }) => to === 'chilled_reserve').reduce((sum, part) => sum + part.volumeL, 0)

/** Chilled parts of a culture's harvests that nobody has discarded, oldest first. A discard takes those due by then. */
export function chilledParts(
  snapshot: RoomSnapshot,
  { id }: { id: string },
  { day, oldestDays }: { day: HusbandryDay; oldestDays: number },
): FactOf<'harvest'>[] {
  const about = { subjectId: id, until: day.endsAt }
  const emptied = lastCare(snapshot, 'discard_reserve', { subjectId: id, day })
  const isDiscarded = (fact: FactOf<'harvest'>) =>
    emptied !== undefined && (daysSince(snapshot, fact, dateOf(snapshot, emptied.at)) ?? 0) >= oldestDays
  return factsUntil(snapshot, 'harvest', about).filter((fact) => chilledL(fact) > 0 && !isDiscarded(fact))
}

export const chilledReserveRule = defineRule(chilledReserveDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const isDue = (fact: FactOf<'harvest'>) => (daysSince(snapshot, fact, day.date) ?? 0) >= parameters.oldestDays
    const due = chilledParts(snapshot, culture, { day, oldestDays: parameters.oldestDays }).filter(isDue)
    const [oldest, ...others] = due
    const ageDays = daysSince(snapshot, oldest, day.date)
    if (!oldest || ageDays === null) return []
    const { shareAlive } = chilledReserve({ ageDays: Math.min(oldestKnownDays, ageDays) })
    const amountL = chilledL(oldest)
    const othersL = Number(others.reduce((sum, fact) => sum + chilledL(fact), 0).toFixed(6))
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'discard',
          title: titled('discard_amount', {
            amount: litres(amountL),
            thing: 'chilled rotifers',
            details: [{ kind: 'age', days: ageDays }],
          }),
          amount: litres(amountL),
          amountOf: 'chilled rotifers',
          steps: [
            phrase(
              'A drop under the lens first: when most still swim after an hour of warmth, they may feed fish today.',
            ),
            ...(othersL > 0
              ? [
                  phrase('The later jars that are too old by now go with it: {amount} more.', {
                    amount: litres(othersL),
                  }),
                ]
              : []),
            phrase('Put a fresh part of the next harvest in the cold, with its date on the jar.'),
          ],
          cautions: releaseCautions,
          because: [
            ...due.map((fact, index) =>
              factLink(fact, {
                label: 'chilled',
                quantity: litres(chilledL(fact)),
                joins: index === 0 ? null : 'and',
              }),
            ),
            parameter('oldestDays', 'and'),
            computedLink('survival in the cold', 'Assavaaree et al. 2001, Aquac. Res. 32:29-39', {
              label: 'still alive, about',
              quantity: share(Number(shareAlive.toFixed(2))),
              joins: 'and',
            }),
          ],
        }),
        context: { litres: Number((amountL + othersL).toFixed(6)) },
      },
    ]
  },
  record: ({ context, subjectId }) => {
    const planned = ContextSchema.parse(context)
    return { facts: [{ kind: 'care', subjectId, data: { act: 'discard_reserve', litres: planned.litres } }] }
  },
})
