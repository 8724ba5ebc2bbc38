import { freshWaterToAddL } from '@fryward/seawater'
import type { Because, TaskField } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { tankTopUpDefinition } from '../../definitions/room/tank-top-up.ts'
import type { FactOf } from '../../facts/fact.ts'
import { tankChange } from '../../plans/change-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { holdsFish } from '../../state/tank-fish.ts'
import { electricityCautions } from '../../task/cautions.ts'
import { numberField } from '../../task/fields.ts'
import { litres, measurableL, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const TopUpContextSchema = z.object({ plannedL: z.number().nullable() })

export const tankTopUp = defineRule(tankTopUpDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (!holdsFish(snapshot, tank, day) || tank.salinity <= 0) return []
    const lastIn = factsUntil(snapshot, 'water_change', { subjectId: tank.id, until: day.endsAt }).at(-1)
    const since = daysSince(snapshot, lastIn, day.date)
    if (since !== null && since < parameters.everyDays) return []
    // A change of water brings it to its mark too.
    if (tankChange(snapshot, tank, day)) return []
    const reading = readingOf(snapshot, tank, { day, lastIn, withinDays: parameters.readWithinDays })
    const plannedL = reading && evaporatedL(tank, reading.salinity)
    // A salinity at its mark says that nothing is missing.
    if (plannedL === 0) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'top_up',
          title:
            plannedL === null
              ? titled('fill_to_mark')
              : titled('fill', { amount: litres(plannedL), thing: 'fresh water' }),
          amount: plannedL === null ? null : litres(plannedL),
          amountOf: plannedL === null ? null : 'fresh water',
          steps: [
            phrase('Purified fresh water, never salt water: only water evaporates.'),
            phrase('Slowly, away from the fish, to the mark and no further. Say how much it took.'),
          ],
          cautions: electricityCautions,
          fields: [addedField(tank, plannedL)],
          because: reading
            ? [...readLinks(tank, { ...reading, plannedL: plannedL ?? 0 }), parameter('everyDays', 'and')]
            : [
                settingLink(tank.id, 'salinity', { label: 'set, no fresh reading', quantity: psu(tank.salinity) }),
                parameter('everyDays', 'and'),
                parameter('readWithinDays', 'and'),
              ],
        }),
        context: { plannedL },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL } = TopUpContextSchema.parse(context)
    const addedL = numberOf(values, 'addedL') ?? plannedL
    if (addedL === null) return { facts: [] }
    return { facts: [{ kind: 'water_change', subjectId, data: { removedL: 0, addedL, salinity: 0 } }] }
  },
})

type Reading = { fact: FactOf<'water_test'>; salinity: number }

/** The salinity read lately, and since water last went in; null when there is none. */
function readingOf(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  given: { day: HusbandryDay; lastIn: FactOf<'water_change'> | undefined; withinDays: number },
): Reading | null {
  const { day, lastIn, withinDays } = given
  const tests = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt })
  const fact = tests.findLast(({ data }) => data.salinity !== undefined)
  const salinity = fact?.data.salinity
  const ageDays = daysSince(snapshot, fact, day.date)
  if (!fact || salinity === undefined || ageDays === null || ageDays > withinDays) return null
  return lastIn && fact.at <= lastIn.at ? null : { fact, salinity }
}

/** Fresh water that brings a tank back to its salinity, to a jug's mark; a quarter of the tank at most. */
function evaporatedL(tank: SnapshotTank, salinity: number): number {
  const { volumeL, salinity: targetSalinity } = tank
  const missingL = freshWaterToAddL({ volumeL, salinity: Math.max(salinity, targetSalinity), targetSalinity })
  return measurableL(Math.min(missingL, volumeL / 4))
}

function addedField(tank: SnapshotTank, plannedL: number | null): TaskField {
  return numberField({
    name: 'addedL',
    label: 'Fresh water put in',
    isRequired: plannedL === null,
    unit: 'L',
    minimum: 0.01,
    maximum: tank.volumeL / 2,
    likely: [0.01, tank.volumeL / 10],
    usual: plannedL,
    step: 0.1,
  })
}

function readLinks(tank: SnapshotTank, { fact, salinity, plannedL }: Reading & { plannedL: number }): Because[] {
  return [
    settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL) }),
    factLink(fact, { label: 'salinity read', quantity: psu(salinity), joins: 'and' }),
    settingLink(tank.id, 'salinity', { label: 'its salinity', quantity: psu(tank.salinity), joins: 'and' }),
    computedLink('evaporation by salinity', null, { label: 'evaporated', quantity: litres(plannedL) }),
  ]
}
