import { changeFraction } from '@fryward/seawater'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { larvalAmmoniaActDefinition } from '../../definitions/larvae/larval-ammonia-act.ts'
import { changeAfter, lastAmmoniaTest } from '../../plans/ammonia-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { daysSince } from '../../state/day-facts.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litres, measurableL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { ammoniaLinks } from '../parts/ammonia-links.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../parts/water-change.ts'

export const larvalAmmoniaAct = defineRule(larvalAmmoniaActDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const tank = tankOf(snapshot, batch)
    if (!tank) return []
    const test = lastAmmoniaTest(snapshot, tank, day)
    if (!test || (daysSince(snapshot, test.fact, day.date) ?? 9) > 1) return []
    if (changeAfter(snapshot, { tank, batch, at: test.fact.at, day })) return []
    const { nh3MgPerL: nh3 } = test
    if (nh3 < parameters.actMgPerL) return []
    const rounds = roundsInOrder(day)
    // In the standing of the test, so that a second test of a day has a second change.
    const round = (test.fact.at >= day.startsAt && roundOfInstant(rounds, test.fact.at)) || firstRound(day)
    const wanted = changeFraction({ current: nh3, incoming: 0, target: Math.min(nh3, parameters.watchMgPerL) })
    const fraction = Math.min(parameters.mostShare, wanted)
    const plannedL = measurableL(tank.volumeL * fraction)
    return [
      {
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', { amount: litres(plannedL), thing: 'new water', details: [also('against ammonia')] }),
          ...waterChangeAmount(plannedL),
          steps: [
            ...matchSteps(tank),
            phrase('Half an hour by a drip line, not at once. It is tested again in the next round.'),
            phrase('Look for the cause: dead animals, food left over, a filter that stands.'),
          ],
          fields: waterChangeFields(tank, plannedL),
          because: [
            ...ammoniaLinks(test),
            parameter('actMgPerL', 'and'),
            parameter('watchMgPerL', 'and'),
            computedLink('dilution by a change', null, {
              label: 'to change',
              quantity: share(Number(fraction.toFixed(2))),
            }),
            settingLink(tank.id, 'volume', {
              label: `in ${tank.name}`,
              quantity: litres(tank.volumeL),
              joins: 'times',
            }),
          ],
        }),
        context: waterChangeContext(tank, plannedL),
      },
    ]
  },
  record: ({ context, values }) => ({ facts: waterChangeFacts(context, values) }),
})
