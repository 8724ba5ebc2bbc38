import type { Because } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferRefillDefinition } from '../../definitions/live-food/rotifer-refill.ts'
import { refillPlan } from '../../plans/refill-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { LevelChange } from '../../state/vessel-level.ts'
import { givenAmountField, salinityField, temperatureField } from '../../task/fields.ts'
import { degC, litres, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf } from '../../task/values.ts'

const ContextSchema = z.object({ plannedL: z.number(), salinity: z.number(), temperatureC: z.number() })

export const rotiferRefill = defineRule(rotiferRefillDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const plan = refillPlan(snapshot, culture, day)
    if (plan.litres < parameters.worthL) return []
    const because: Because[] = [
      ...plan.missing.changes.map(changeLink),
      computedLink('litres taken out and not put back', null, {
        label: 'still missing',
        quantity: litres(Number(plan.missing.litres.toFixed(6))),
        joins: 'equals',
      }),
      settingLink(culture.id, 'salinity', { label: 'its salinity', quantity: psu(culture.salinity), joins: 'and' }),
      settingLink(culture.id, 'temperature', {
        label: 'its temperature',
        quantity: degC(culture.temperatureC),
        joins: 'and',
      }),
      parameter('worthL', 'and'),
    ]
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'refill',
          title: titled('fill', { amount: litres(plan.litres), thing: 'new water' }),
          amount: litres(plan.litres),
          amountOf: 'new water',
          steps: [
            phrase('Measure the new water: {salinity}, {temperature}.', {
              salinity: psu(culture.salinity),
              temperature: degC(culture.temperatureC),
            }),
            phrase('Pour it in slowly and stop at the mark, even when some is left over.'),
          ],
          fields: [
            givenAmountField({
              name: 'amountL',
              label: 'Water put in',
              unit: 'L',
              planned: plan.litres,
              maximum: culture.volumeL,
              step: 0.1,
            }),
            salinityField(culture.salinity),
            temperatureField(culture.temperatureC),
          ],
          because,
        }),
        context: { plannedL: plan.litres, salinity: culture.salinity, temperatureC: culture.temperatureC },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL } = ContextSchema.parse(context)
    const measured = given({
      salinity: numberOf(values, 'salinity'),
      temperatureC: numberOf(values, 'temperatureC'),
    })
    const addedL = numberOf(values, 'amountL') ?? plannedL
    return { facts: [{ kind: 'water_change', subjectId, data: { removedL: 0, addedL, ...measured } }] }
  },
})

const changeLink = ({ fact, litres: changeL }: LevelChange, index: number): Because =>
  factLink(fact, {
    label: changeL > 0 ? 'taken out' : 'put back',
    quantity: litres(Math.abs(changeL)),
    joins: index === 0 ? null : changeL > 0 ? 'plus' : 'minus',
  })
