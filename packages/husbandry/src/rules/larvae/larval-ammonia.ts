import { changeFraction, unionisedAmmoniaNitrogen } from '@fryward/seawater'
import type { Because, FactOf } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, fromMemory } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { numberField, temperatureField } from '../fields.ts'
import { litres, measurableL, share } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { given, numberOf } from '../values.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../water-change.ts'
import { batchById } from './prey-count.ts'

const TankContextSchema = z.object({ tankId: z.string() })

export const larvalAmmoniaTest = defineRule({
  id: 'larval-ammonia-test',
  title: 'Test the larvae’s water',
  sentence: 'From day {fromDay} test ammonia, pH and temperature in every larval tank every {everyDays} days.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    fromDay: {
      type: 'number',
      label: 'old at the first test',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 30,
      source: commonPractice(),
    },
    everyDays: {
      type: 'number',
      label: 'from one test to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice('every other day where water is changed daily'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank || diet.day < parameters.fromDay) return []
    const last = lastAmmoniaTest(snapshot, tank, day)
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'test',
          title: phrase('Test the ammonia'),
          steps: [
            phrase('Total ammonia, as nitrogen (N): a kit that reads NH3 or NH4 says so on its card.'),
            phrase('pH and temperature at the same time: they say how much of it is poisonous.'),
            phrase('Any colour at all on the card is something to act on.'),
          ],
          fields: [
            numberField({
              name: 'totalAmmoniaNMgPerL',
              label: 'Total ammonia (as N)',
              isRequired: true,
              unit: 'mg_per_L',
              minimum: 0,
              maximum: 100,
              likely: [0, 2],
              usual: 0,
              step: 0.05,
            }),
            numberField({
              name: 'pH',
              label: 'pH',
              unit: 'pH',
              minimum: 4,
              maximum: 11,
              likely: [7.6, 8.6],
              usual: 8.1,
              step: 0.1,
            }),
            temperatureField(tank.temperatureC),
          ],
          because: [
            ...(last
              ? [factLink(last, { label: 'last tested' })]
              : [settingLink(tank.id, 'water tests', { label: 'tests so far', text: 'none' })]),
            parameter('everyDays', 'and'),
          ],
        }),
        context: { tankId: tank.id },
      },
    ]
  },
  record: ({ context, values }) => {
    const { tankId } = TankContextSchema.parse(context)
    const data = given({
      totalAmmoniaNMgPerL: numberOf(values, 'totalAmmoniaNMgPerL'),
      pH: numberOf(values, 'pH'),
      temperatureC: numberOf(values, 'temperatureC'),
    })
    return { facts: [{ kind: 'water_test', subjectId: tankId, data }] }
  },
})

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
    const temperatureC = Math.min(ammoniaC.to, Math.max(ammoniaC.from, test.data.temperatureC ?? tank.temperatureC))
    const nh3 = unionisedAmmoniaNitrogen({
      totalAmmoniaNitrogenMgPerL: totalMgPerL,
      pH: test.data.pH ?? assumedPH,
      temperatureC,
      salinity: tank.salinity,
    })
    if (nh3 < parameters.actMgPerL) return []
    const fraction = changeFraction({ current: nh3, incoming: 0, target: Math.min(nh3, parameters.watchMgPerL) })
    const plannedL = measurableL(tank.volumeL * Math.min(parameters.mostShare, fraction))
    const because: Because[] = [
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
      parameter('actMgPerL', 'and'),
      parameter('watchMgPerL', 'and'),
      computedLink('dilution by a change', null, {
        label: 'to change',
        quantity: share(Number(Math.min(parameters.mostShare, fraction).toFixed(2))),
      }),
      settingLink(tank.id, 'volume', {
        label: `in ${tank.name}`,
        quantity: litres(tank.volumeL),
        joins: 'times',
      }),
    ]
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
          because,
        }),
        context: waterChangeContext(tank, plannedL),
      },
    ]
  },
  record: ({ context, values }) => ({ facts: waterChangeFacts(context, values) }),
})

function lastAmmoniaTest(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  day: HusbandryDay,
): FactOf<'water_test'> | undefined {
  return factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.totalAmmoniaNMgPerL !== undefined,
  )
}
