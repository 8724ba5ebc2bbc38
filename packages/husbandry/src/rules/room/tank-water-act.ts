import { changeFraction } from '@fryward/seawater'
import type { Because } from '@fryward/shared'
import { firstRound, roundOfInstant, roundsInOrder } from '../../calendar/rounds.ts'
import { tankWaterActDefinition } from '../../definitions/room/tank-water-act.ts'
import { type HarmfulWater, harmfulWater, tankChangeAfter } from '../../plans/tank-water-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { daysSince } from '../../state/day-facts.ts'
import { hasLarvae, holdsFish } from '../../state/tank-fish.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
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

export const tankWaterAct = defineRule(tankWaterActDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    // Where larvae swim too their own, stricter limits say.
    if (!holdsFish(snapshot, tank, day) || hasLarvae(snapshot, tank)) return []
    const found = harmfulWater(snapshot, tank, day)
    if (!found || (daysSince(snapshot, found.fact, day.date) ?? 9) > 1) return []
    if (tankChangeAfter(snapshot, { tank, at: found.fact.at, day })) return []
    const rounds = roundsInOrder(day)
    const round = (found.fact.at >= day.startsAt && roundOfInstant(rounds, found.fact.at)) || firstRound(day)
    const wanted = changeFraction({ current: found.mgPerL, incoming: 0, target: found.limitMgPerL / 2 })
    const fraction = Math.min(parameters.mostShare, wanted)
    const plannedL = measurableL(tank.volumeL * fraction)
    return [
      {
        roundId: round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', {
            amount: litres(plannedL),
            thing: 'new water',
            details: [also(`against ${found.of}`)],
          }),
          ...waterChangeAmount(plannedL),
          steps: [
            ...matchSteps(tank),
            phrase('More air at once. No food until the next test; half a feed after it while any is left.'),
            phrase('Look for the cause: a dead fish, food left over, a filter that stands or was washed too clean.'),
            phrase('It is tested again in the next round. Gasping fish go to a tank whose water is sound.'),
          ],
          cautions: fishWaterCautions,
          fields: waterChangeFields(tank, plannedL),
          because: [
            ...(found.ammonia ? ammoniaLinks(found.ammonia) : nitriteLinks(found)),
            parameter(found.of === 'ammonia' ? 'ammoniaMgPerL' : 'nitriteMgPerL', 'and'),
            computedLink('dilution by a change, to half the limit', null, {
              label: 'to change',
              quantity: share(Number(fraction.toFixed(2))),
            }),
            parameter('mostShare', 'and'),
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

const nitriteLinks = ({ fact, mgPerL }: HarmfulWater): Because[] => [
  factLink(fact, { label: 'nitrite (as N)', quantity: { value: mgPerL, unit: 'mg_per_L' } }),
]
