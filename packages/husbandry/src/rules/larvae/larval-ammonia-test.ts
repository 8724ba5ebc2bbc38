import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { larvalAmmoniaTestDefinition } from '../../definitions/larvae/larval-ammonia-test.ts'
import { ammoniaRetest, assumedPH, lastAmmoniaTest, totalToActOn } from '../../plans/ammonia-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { daysSince } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { numberField, temperatureField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { waterTestFacts } from '../parts/water-test.ts'

const TankContextSchema = z.object({ tankId: z.string() })

export const larvalAmmoniaTest = defineRule(larvalAmmoniaTestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    const tank = tankOf(snapshot, batch)
    if (!diet || !tank || diet.day < parameters.fromDay) return []
    const last = lastAmmoniaTest(snapshot, tank, day)?.fact
    const retest = ammoniaRetest(snapshot, { tank, batch, day })
    const since = daysSince(snapshot, last, day.date)
    if (!retest && since !== null && since < parameters.everyDays) return []
    return [
      {
        roundId: (retest?.round ?? firstRound(day)).id,
        ...(retest ? { lateAfterMinutes: 60 } : {}),
        content: taskContent({
          verb: 'test',
          title: titled('test', { thing: retest ? 'the ammonia again, after the change' : 'the ammonia' }),
          steps: [
            phrase('Total ammonia, as nitrogen (N): a kit that reads NH3 or NH4 says so on its card.'),
            phrase('pH and temperature at the same time: they say how much of it is poisonous.'),
            phrase(
              'From {total} on, water is changed at once: at {pH} that much is poisonous here. Any colour below it is watched; none is best.',
              {
                total: { value: Number(totalToActOn(snapshot, tank).toPrecision(2)), unit: 'mg_per_L' },
                pH: { value: assumedPH, unit: 'pH' },
              },
            ),
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
              step: 0.05,
            }),
            numberField({
              name: 'pH',
              label: 'pH',
              unit: 'pH',
              minimum: 4,
              maximum: 11,
              likely: [7.6, 8.6],
              step: 0.1,
            }),
            temperatureField(tank.temperatureC),
          ],
          because: [
            ...(last
              ? [factLink(last, { label: 'last tested' })]
              : [settingLink(tank.id, 'water tests', { label: 'tests so far', text: 'none' })]),
            ...(retest ? [factLink(retest.change, { label: 'water changed against it', joins: 'and' as const })] : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: { tankId: tank.id },
      },
    ]
  },
  record: ({ context, values }) => {
    const { tankId } = TankContextSchema.parse(context)
    return { facts: waterTestFacts(tankId, values) }
  },
})
