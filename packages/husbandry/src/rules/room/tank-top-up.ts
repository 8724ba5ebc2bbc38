import type { Because, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { afterMorning } from '../../calendar/rounds.ts'
import { tankTopUpDefinition } from '../../definitions/room/tank-top-up.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { type TankTopUp, tanksToTopUp } from '../../plans/top-up-tanks.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { readBy } from '../../state/water-reads.ts'
import { electricityCautions } from '../../task/cautions.ts'
import { numberField } from '../../task/fields.ts'
import { litres, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const ContextSchema = z.object({
  plannedL: z.number().nullable(),
  /** The others of its walk, in order; tasks kept before tanks were topped up together did not say. */
  others: z.array(z.object({ tankId: z.string(), plannedL: z.number().nullable() })).default([]),
})

export const tankTopUp = defineRule(tankTopUpDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const topUps = tanksToTopUp(snapshot, tankById(snapshot, subject.id), day)
    const [first, ...others] = topUps
    // One tank of a station stands for all that are filled on the same walk.
    if (!first || first.tank.id !== subject.id) return []
    const amount = first.plannedL === null || others.length > 0 ? null : litres(first.plannedL)
    return [
      {
        roundId: afterMorning(day).id,
        content: taskContent({
          verb: 'top_up',
          title: titled(amount ? 'fill' : 'fill_to_mark', {
            amount,
            thing: amount && 'fresh water',
            details: others.length > 0 ? [also(`${others.map(({ tank }) => tank.name).join(', ')} too`)] : [],
          }),
          amount,
          amountOf: amount && 'fresh water',
          steps: [
            ...(others.length > 0 ? topUps.flatMap(amountSteps) : []),
            phrase('Purified fresh water, never salt water: only water evaporates.'),
            phrase('Slowly, away from the fish, to the mark and no further. Say how much it took.'),
          ],
          cautions: electricityCautions,
          fields: topUps.map((each, index) => addedField(each, { index, isAlone: others.length === 0 })),
          because: [
            ...topUps.flatMap(whyLinks),
            parameter('everyDays', 'and'),
            ...(topUps.some(({ reading }) => reading === null) ? [parameter('readWithinDays', 'and')] : []),
          ],
        }),
        context: {
          plannedL: first.plannedL,
          others: others.map(({ tank, plannedL }) => ({ tankId: tank.id, plannedL })),
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, others } = ContextSchema.parse(context)
    return {
      facts: [{ tankId: subjectId, plannedL }, ...others].flatMap((each, index) => filled(each, { index, values })),
    }
  },
})

const fieldName = (index: number): string => (index === 0 ? 'addedL' : `addedL${index + 1}`)

function filled(
  { tankId, plannedL }: { tankId: string; plannedL: number | null },
  { index, values }: { index: number; values: Record<string, unknown> },
): FactDraft[] {
  const addedL = numberOf(values, fieldName(index)) ?? plannedL
  return addedL === null
    ? []
    : [{ kind: 'water_change', subjectId: tankId, data: { removedL: 0, addedL, salinity: 0 } }]
}

const amountSteps = ({ tank, plannedL }: TankTopUp): Phrase[] =>
  plannedL === null ? [] : [phrase(`${tank.name}: {amount} by its salinity.`, { amount: litres(plannedL) })]

function addedField({ tank, plannedL }: TankTopUp, { index, isAlone }: { index: number; isAlone: boolean }): TaskField {
  return numberField({
    name: fieldName(index),
    label: isAlone ? 'Fresh water put in' : `Put into ${tank.name}`,
    isRequired: plannedL === null,
    unit: 'L',
    minimum: 0.01,
    maximum: tank.volumeL / 2,
    likely: [0.01, tank.volumeL / 10],
    usual: plannedL,
    step: 0.1,
  })
}

function whyLinks({ tank, reading, plannedL }: TankTopUp): Because[] {
  if (!reading || plannedL === null)
    return [
      settingLink(tank.id, 'salinity', {
        label: 'set, no fresh reading',
        quantity: psu(tank.salinity),
        joins: 'and',
      }),
    ]
  return [
    settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL), joins: 'and' }),
    factLink(reading.fact, {
      label: `salinity read ${readBy(reading)}`,
      quantity: psu(reading.salinity),
      joins: 'and',
    }),
    settingLink(tank.id, 'salinity', { label: 'its salinity', quantity: psu(tank.salinity), joins: 'and' }),
    computedLink('evaporation by salinity', null, { label: 'evaporated', quantity: litres(plannedL) }),
  ]
}
