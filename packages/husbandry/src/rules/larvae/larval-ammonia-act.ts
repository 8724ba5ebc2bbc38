import { changeFraction, unionisedAmmoniaNitrogen } from '@fryward/seawater'
import type { Because } from '@fryward/shared'
import { firstRound } from '../../calendar/rounds.ts'
import { larvalAmmoniaActDefinition } from '../../definitions/larvae/larval-ammonia-act.ts'
import type { FactOf } from '../../facts/fact.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litres, measurableL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../parts/water-change.ts'
import { lastAmmoniaTest } from './last-ammonia-test.ts'

// Sea water where no pH was read: on the high side of 7.8-8.3, so that the poisonous part is not underrated. from memory
const assumedPH = 8.2
// Where the ammonia formulas hold (seawater).
const ammoniaC = { from: 0, to: 40 }

export const larvalAmmoniaAct = defineRule(larvalAmmoniaActDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const tank = tankOf(snapshot, batch)
    if (!tank) return []
    const test = lastAmmoniaTest(snapshot, tank, day)
    const totalMgPerL = test?.data.totalAmmoniaNMgPerL
    if (!test || totalMgPerL === undefined || totalMgPerL <= 0 || (daysSince(snapshot, test, day.date) ?? 9) > 1)
      return []
    const changedSince = [tank.id, batch.id].some((subjectId) =>
      factsUntil(snapshot, 'water_change', { subjectId, until: day.endsAt }).some(
        ({ at, data }) => at > test.at && data.removedL > 0,
      ),
    )
    if (changedSince) return []
    const nh3 = nh3Of(tank, { test, totalMgPerL })
    if (nh3 < parameters.actMgPerL) return []
    const wanted = changeFraction({ current: nh3, incoming: 0, target: Math.min(nh3, parameters.watchMgPerL) })
    const fraction = Math.min(parameters.mostShare, wanted)
    const plannedL = measurableL(tank.volumeL * fraction)
    return [
      {
        roundId: firstRound(day).id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'change_water',
          title: titled('give', { amount: litres(plannedL), thing: 'new water', details: [also('against ammonia')] }),
          ...waterChangeAmount(plannedL),
          steps: [
            ...matchSteps(tank),
            phrase('Half an hour by a drip line, not at once; then test again.'),
            phrase('Look for the cause: dead animals, food left over, a filter that stands.'),
          ],
          fields: waterChangeFields(tank, plannedL),
          because: [
            ...ammoniaLinks({ test, totalMgPerL, nh3 }),
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

type AmmoniaTest = { test: FactOf<'water_test'>; totalMgPerL: number }

/** The poisonous part of a reading, mg/L NH3-N, by its own pH and warmth where they were read. */
function nh3Of(tank: SnapshotTank, { test, totalMgPerL }: AmmoniaTest): number {
  return unionisedAmmoniaNitrogen({
    totalAmmoniaNitrogenMgPerL: totalMgPerL,
    pH: test.data.pH ?? assumedPH,
    temperatureC: Math.min(ammoniaC.to, Math.max(ammoniaC.from, test.data.temperatureC ?? tank.temperatureC)),
    salinity: tank.salinity,
  })
}

function ammoniaLinks({ test, totalMgPerL, nh3 }: AmmoniaTest & { nh3: number }): Because[] {
  return [
    factLink(test, { label: 'total ammonia (as N)', quantity: { value: totalMgPerL, unit: 'mg_per_L' } }),
    test.data.pH === undefined
      ? computedLink('assumed, for none was read', 'from memory', {
          label: 'taken for the water',
          quantity: { value: assumedPH, unit: 'pH' },
          joins: 'and',
        })
      : factLink(test, { label: 'read in the water', quantity: { value: test.data.pH, unit: 'pH' }, joins: 'and' }),
    computedLink('ammonia by pH, warmth and salinity', 'Emerson et al. 1975; Bower & Bidwell 1978 (NBS scale)', {
      label: 'un-ionised, NH3-N',
      quantity: { value: Number(nh3.toPrecision(2)), unit: 'mg_per_L' },
    }),
  ]
}
