import { computedLink, defineRule, factLink, settingLink } from '../../engine/rule.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { electricityCautions } from '../cautions.ts'
import { litres } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { tankChange, tankChangeId, tankChangeParameters } from '../plans/change-plan.ts'
import { middleRound } from '../rounds.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../water-change.ts'
import { tankById } from './tank.ts'

export const tankWaterChange = defineRule({
  id: tankChangeId,
  title: 'Change the tanks’ water',
  sentence:
    'Change {share} of the water of every tank with fish every {everyDays} days, matched in salinity and temperature.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: tankChangeParameters,
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
          title: phrase('{amount} new water', { amount: litres(plan.litres) }),
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
