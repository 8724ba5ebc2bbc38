import { middleRound } from '../../calendar/rounds.ts'
import { tankWaterTestDefinition } from '../../definitions/room/tank-water-test.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
import { numberField, salinityField, temperatureField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf } from '../../task/values.ts'
import { holdsFish } from './tanks-with-fish.ts'

export const tankWaterTest = defineRule(tankWaterTestDefinition, {
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
          title: titled('test', { thing: 'the water' }),
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
              step: 0.1,
            }),
            numberField({
              ...mgPerL,
              name: 'totalAmmoniaNMgPerL',
              label: 'Total ammonia (as N)',
              maximum: 100,
              likely: [0, 1],
              step: 0.05,
            }),
            numberField({
              ...mgPerL,
              name: 'nitriteNMgPerL',
              label: 'Nitrite (as N)',
              maximum: 100,
              likely: [0, 1],
              step: 0.05,
            }),
            numberField({
              ...mgPerL,
              name: 'nitrateNMgPerL',
              label: 'Nitrate (as N)',
              maximum: 1000,
              likely: [0, 50],
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
