import { freshWaterToAddL } from '@fryward/seawater'
import { z } from 'zod'
import { commonPractice } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { electricityCautions, fishWaterCautions } from '../cautions.ts'
import { numberField, salinityField, temperatureField } from '../fields.ts'
import { litres, measurableL, psu } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { tankChange, tankChangeId, tankChangeParameters } from '../plans/change-plan.ts'
import { firstRound, middleRound } from '../rounds.ts'
import { given, numberOf } from '../values.ts'
import {
  matchSteps,
  waterChangeAmount,
  waterChangeContext,
  waterChangeFacts,
  waterChangeFields,
} from '../water-change.ts'

/** The tank with this id; throws when the snapshot does not hold it. */
export function tankById(snapshot: RoomSnapshot, id: string): SnapshotTank {
  const tank = snapshot.tanks.find((each) => each.id === id)
  if (!tank) throw new Error(`The snapshot has no tank ${id}`)
  return tank
}

const withFish = ['broodstock', 'grow_out', 'quarantine'] as const
const holdsFish = (tank: SnapshotTank): boolean => withFish.some((kind) => kind === tank.kind)

export const tankWaterTest = defineRule({
  id: 'tank-water-test',
  title: 'Test the water',
  sentence:
    'Test temperature, salinity, pH, ammonia, nitrite and nitrate of every tank with fish every {everyDays} days.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one test to the next',
      unit: 'days',
      default: 7,
      minimum: 1,
      maximum: 60,
      source: commonPractice('weekly'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (!holdsFish(tank)) return []
    const last = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).at(-1)
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    const mgPerL = { unit: 'mg_per_L', minimum: 0 } as const
    return [
      {
        roundId: middleRound(day).id,
        content: taskContent({
          verb: 'test',
          title: phrase('Test the water'),
          steps: [
            phrase('Before feeding, and before any change of water. What you did not measure stays empty.'),
            phrase('Ammonia, nitrite and nitrate as nitrogen (N): the kit’s card says what it reads.'),
          ],
          cautions: fishWaterCautions,
          fields: [
            temperatureField(tank.temperatureC, true),
            salinityField(tank.salinity),
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
            numberField({
              ...mgPerL,
              name: 'totalAmmoniaNMgPerL',
              label: 'Total ammonia (as N)',
              maximum: 100,
              likely: [0, 1],
              usual: 0,
              step: 0.05,
            }),
            numberField({
              ...mgPerL,
              name: 'nitriteNMgPerL',
              label: 'Nitrite (as N)',
              maximum: 100,
              likely: [0, 1],
              usual: 0,
              step: 0.05,
            }),
            numberField({
              ...mgPerL,
              name: 'nitrateNMgPerL',
              label: 'Nitrate (as N)',
              maximum: 1000,
              likely: [0, 50],
              usual: 5,
              step: 1,
            }),
          ],
          because: [
            last
              ? factLink(last, { label: 'last tested' })
              : settingLink(tank.id, 'water tests', { label: 'tests so far', text: 'none' }),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const data = given({
      temperatureC: numberOf(values, 'temperatureC'),
      salinity: numberOf(values, 'salinity'),
      pH: numberOf(values, 'pH'),
      totalAmmoniaNMgPerL: numberOf(values, 'totalAmmoniaNMgPerL'),
      nitriteNMgPerL: numberOf(values, 'nitriteNMgPerL'),
      nitrateNMgPerL: numberOf(values, 'nitrateNMgPerL'),
    })
    return { facts: [{ kind: 'water_test', subjectId, data }] }
  },
})

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

const TopUpContextSchema = z.object({ plannedL: z.number().nullable() })

export const tankTopUp = defineRule({
  id: 'tank-top-up',
  title: 'Top up what evaporated',
  sentence:
    'Every {everyDays} days top every tank with fish up to its mark with fresh water; by its salinity where that was read in the last {readWithinDays} days.',
  subject: 'tank',
  station: 'room',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one top-up to the next',
      unit: 'days',
      default: 2,
      minimum: 1,
      maximum: 14,
      source: commonPractice(),
    },
    readWithinDays: {
      type: 'number',
      label: 'since the reading at most',
      unit: 'days',
      default: 1,
      minimum: 0,
      maximum: 7,
      source: commonPractice(),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (!holdsFish(tank) || tank.salinity <= 0) return []
    const about = { subjectId: tank.id, until: day.endsAt }
    const lastIn = factsUntil(snapshot, 'water_change', about).at(-1)
    const read = factsUntil(snapshot, 'water_test', about).findLast(({ data }) => data.salinity !== undefined)
    const salinity = read?.data.salinity
    const isRead =
      read !== undefined &&
      salinity !== undefined &&
      (daysSince(snapshot, read, day.date) ?? 99) <= parameters.readWithinDays &&
      (!lastIn || read.at > lastIn.at)
    const since = daysSince(snapshot, lastIn, day.date)
    if (since !== null && since < parameters.everyDays) return []
    // A change of water brings it to its mark too.
    if (tankChange(snapshot, tank, day)) return []
    const missingL = isRead
      ? freshWaterToAddL({
          volumeL: tank.volumeL,
          salinity: Math.max(salinity, tank.salinity),
          targetSalinity: tank.salinity,
        })
      : null
    // A salinity at its mark says that nothing is missing.
    const plannedL = missingL === null ? null : measurableL(Math.min(missingL, tank.volumeL / 4))
    if (plannedL === 0) return []
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'top_up',
          title:
            plannedL === null
              ? phrase('Top up to the mark')
              : phrase('{amount} fresh water in', { amount: litres(plannedL) }),
          amount: plannedL === null ? null : litres(plannedL),
          amountOf: plannedL === null ? null : 'fresh water',
          steps: [
            phrase('Purified fresh water, never salt water: only water evaporates.'),
            phrase('Slowly, away from the fish, to the mark and no further. Say how much it took.'),
          ],
          cautions: electricityCautions,
          fields: [
            numberField({
              name: 'addedL',
              label: 'Fresh water put in',
              isRequired: plannedL === null,
              unit: 'L',
              minimum: 0.01,
              maximum: tank.volumeL / 2,
              likely: [0.01, tank.volumeL / 10],
              usual: plannedL,
              step: 0.1,
            }),
          ],
          because: isRead
            ? [
                settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL) }),
                factLink(read, { label: 'salinity read', quantity: psu(salinity), joins: 'and' }),
                settingLink(tank.id, 'salinity', { label: 'its salinity', quantity: psu(tank.salinity), joins: 'and' }),
                computedLink('evaporation by salinity', null, {
                  label: 'evaporated',
                  quantity: litres(plannedL ?? 0),
                }),
                parameter('everyDays', 'and'),
              ]
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
