import { middleRound } from '../../calendar/rounds.ts'
import { tankWaterChangeDefinition } from '../../definitions/room/tank-water-change.ts'
import { tankChange } from '../../plans/change-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { electricityCautions } from '../../task/cautions.ts'
import { litres } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../parts/water-change.ts'

export const tankWaterChange = defineRule(tankWaterChangeDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    const plan = tankChange(snapshot, tank, day)
    if (!plan) return []
    const last = factsUntil(snapshot, 'water_change', { subjectId: tank.id, until: day.endsAt }).at(-1)
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', { amount: litres(plan.litres), thing: 'new water' }),
          ...waterChangeAmount(plan.litres),
          steps: [
            ...matchSteps(tank),
            phrase('Heater and pump off while the level is low; siphon the dirt, not the fish.'),
            phrase('Quarantine last, with a hose and bucket of its own.'),
          ],
          cautions: electricityCautions,
          fields: waterChangeFields(tank, plan.litres),
          because: [
            settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL) }),
            parameter('share', 'times'),
            computedLink('to a jug’s mark', null, { label: 'to change', quantity: litres(plan.litres) }),
            parameter('everyDays', 'and'),
            ...(last ? [factLink(last, { label: 'last water in', joins: 'and' as const })] : []),
          ],
        }),
        context: waterChangeContext(tank, plan.litres),
      },
    ]
  },
  record: ({ context, values }) => ({ facts: waterChangeFacts(context, values) }),
})
