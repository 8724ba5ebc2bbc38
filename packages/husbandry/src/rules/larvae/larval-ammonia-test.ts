import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { larvalAmmoniaTestDefinition } from '../../definitions/larvae/larval-ammonia-test.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { daysSince } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { numberField, temperatureField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf } from '../../task/values.ts'
import { lastAmmoniaTest } from './last-ammonia-test.ts'

const TankContextSchema = z.object({ tankId: z.string() })

export const larvalAmmoniaTest = defineRule(larvalAmmoniaTestDefinition, {
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
          title: titled('test', { thing: 'the ammonia' }),
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
