import type { TaskField } from '@fryward/shared'
import { z } from 'zod'
import { middleRound } from '../../calendar/rounds.ts'
import { tankWaterChangeDefinition } from '../../definitions/room/tank-water-change.ts'
import { tankChange } from '../../plans/tank-change-plan.ts'
import { isTestDue } from '../../plans/tank-water-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { electricityCautions } from '../../task/cautions.ts'
import { salinityField } from '../../task/fields.ts'
import { litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../parts/water-change.ts'
import { waterTestFacts, waterTestFields, waterTestSteps } from '../parts/water-test.ts'

export const tankWaterChange = defineRule(tankWaterChangeDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    const plan = tankChange(snapshot, tank, day)
    if (!plan) return []
    const withTest = isTestDue(snapshot, tank, day)
    const last = factsUntil(snapshot, 'water_change', { subjectId: tank.id, until: day.endsAt }).at(-1)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', {
            amount: litres(plan.litres),
            thing: 'new water',
            details: withTest ? [also('water tested first')] : [],
          }),
          ...waterChangeAmount(plan.litres),
          steps: [
            ...(withTest ? waterTestSteps : []),
            ...matchSteps(tank),
            phrase('Heater and pump off while the level is low; siphon the dirt, not the fish.'),
            phrase('Quarantine last, with a hose and bucket of its own.'),
          ],
          cautions: electricityCautions,
          fields: withTest
            ? [...waterTestFields(tank), ...newWaterFields(tank, plan.litres)]
            : waterChangeFields(tank, plan.litres),
          because: [
            settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL) }),
            settingLink(tank.id, 'filter', { label: 'filter', text: tank.hasFilter ? 'runs' : 'none', joins: 'and' }),
            parameter(tank.hasFilter ? 'share' : 'unfilteredShare', 'times'),
            computedLink('to a jug’s mark', null, { label: 'to change', quantity: litres(plan.litres) }),
            parameter('everyDays', 'and'),
            ...(last ? [factLink(last, { label: 'last water in', joins: 'and' as const })] : []),
          ],
        }),
        context: { ...waterChangeContext(tank, plan.litres), withTest },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    // What was read is the old water's; what went in was matched to the tank.
    if (!ContextSchema.parse(context).withTest) return { facts: waterChangeFacts(context, values) }
    const change = waterChangeFacts(context, { amountL: values.amountL, salinity: values.newSalinity })
    return { facts: [...waterTestFacts(subjectId, values), ...change] }
  },
})

const ContextSchema = z.object({
  /** Tasks that were kept before a change took its test along did not say. */
  withTest: z.boolean().default(false),
})

/** Of the new water beside a test of the old: how much, and its own salinity. */
function newWaterFields(tank: SnapshotTank, plannedL: number): TaskField[] {
  const [amount] = waterChangeFields(tank, plannedL)
  return [
    ...(amount ? [amount] : []),
    { ...salinityField(tank.salinity), name: 'newSalinity', label: 'Salinity of the new water' },
  ]
}
