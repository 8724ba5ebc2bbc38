import { changeFraction, unionisedAmmoniaNitrogen } from '@fryward/seawater'
import type { Because, FactOf } from '@fryward/shared'
import { commonPractice, fromMemory } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, settingLink } from '../../engine/rule.ts'
import type { SnapshotTank } from '../../snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { litres, measurableL, share } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../water-change.ts'
import { lastAmmoniaTest } from './last-ammonia-test.ts'
import { batchById } from './prey-count.ts'

// Sea water where no pH was read: on the high side of 7.8-8.3, so that the poisonous part is not underrated. from memory
const assumedPH = 8.2
// Where the ammonia formulas hold (seawater).
const ammoniaC = { from: 0, to: 40 }

export const larvalAmmoniaAct = defineRule({
  id: 'larval-ammonia-act',
  title: 'Bring ammonia down',
  sentence:
    'When the last test reads {actMgPerL} of un-ionised ammonia (NH3-N) or more, change water until {watchMgPerL} is left, at most {mostShare} at once.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    watchMgPerL: {
      type: 'number',
      label: 'NH3-N to come down to',
      unit: 'mg_per_L',
      default: 0.01,
      minimum: 0.001,
      maximum: 0.5,
      source: fromMemory('NH3-N under 0.01-0.02 for marine larvae: house limits after textbooks'),
    },
    actMgPerL: {
      type: 'number',
      label: 'NH3-N from which to act',
      unit: 'mg_per_L',
      default: 0.02,
      minimum: 0.002,
      maximum: 1,
      source: commonPractice('act at 0.02 NH3-N; harm from 0.05 mg/L NH3: Francis-Floyd & Watson, UF/IFAS FA-16'),
    },
    mostShare: {
      type: 'number',
      label: 'at most at once',
      unit: 'share',
      default: 0.5,
      minimum: 0.1,
      maximum: 0.9,
      source: commonPractice('half at once; again after the next test'),
    },
  },
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
          title: phrase('{amount} new water, against ammonia', { amount: litres(plannedL) }),
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
