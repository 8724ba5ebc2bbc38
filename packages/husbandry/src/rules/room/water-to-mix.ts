import type { Because, Phrase, Quantity, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { addDays, husbandryDay } from '../../calendar/husbandry-day.ts'
import { lastRound } from '../../calendar/rounds.ts'
import { roomWaterToMixDefinition } from '../../definitions/room/room-water-to-mix.ts'
import { type WaterGroup, type WaterNeed, waterGroups, waterNeeds } from '../../plans/water-needs.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { electricityCautions } from '../../task/cautions.ts'
import { givenAmountField, numberField } from '../../task/fields.ts'
import { grams, litres, measurableG, measurableL, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { given, numberOf } from '../../task/values.ts'

const ContextSchema = z.object({
  plannedL: z.number(),
  /** Null where some of it is saltier than can be worked out. */
  plannedSaltG: z.number().nullable(),
})

export const roomWaterToMix = defineRule(roomWaterToMixDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tomorrow = husbandryDay({ room: snapshot.room, date: addDays(day.date, 1) })
    const needs = waterNeeds(snapshot, { today: day, tomorrow })
    if (needs.length === 0) return []
    const mixed = factsOnDay(snapshot, 'care', { subjectId: subject.id, day }).some(
      ({ data }) => data.act === 'mix_water',
    )
    if (mixed) return []
    const mix = toMix(needs, parameters)
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'mix',
          title: titled('give', {
            amount: litres(mix.totalL),
            thing: 'new water for tomorrow',
            details: saltOf(mix).map((quantity) => ({ kind: 'amount', quantity, of: 'salt' })),
          }),
          amount: litres(mix.totalL),
          amountOf: 'new water',
          steps: mixSteps(mix),
          cautions: electricityCautions,
          fields: mixFields(mix),
          because: [
            ...needLinks(needs),
            parameter('spareShare', 'and'),
            computedLink('sum of tomorrow’s needs with the spare', null, {
              label: 'to mix',
              quantity: litres(mix.totalL),
            }),
            ...salinityLinks(mix),
            parameter('dryShare', 'and'),
            ...saltOf(mix).map((quantity) =>
              computedLink(
                'salt for that much water',
                'Millero et al. 2008, Deep-Sea Research I 55:50-72; EOS-80 density',
                { label: 'salt', quantity },
              ),
            ),
          ],
        }),
        context: { plannedL: mix.totalL, plannedSaltG: mix.totalSaltG },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { plannedL, plannedSaltG } = ContextSchema.parse(context)
    const saltG = numberOf(values, 'saltG') ?? plannedSaltG ?? undefined
    const data = { act: 'mix_water' as const, litres: numberOf(values, 'litres') ?? plannedL, ...given({ saltG }) }
    return { facts: [{ kind: 'care', subjectId, data }] }
  },
})

type Mix = {
  groups: WaterGroup[]
  totalL: number
  /** Null where some of it is saltier than can be worked out: a part of the salt would be taken for all of it. */
  totalSaltG: number | null
}

const saltOf = ({ totalSaltG }: Mix): Quantity[] => (totalSaltG === null ? [] : [grams(totalSaltG)])

/** The needs by salinity, with the spare, to marks of a jug and a scale. */
function toMix(needs: readonly WaterNeed[], parameters: { spareShare: number; dryShare: number }): Mix {
  const over = 1 + parameters.spareShare
  const groups = waterGroups(needs, parameters).map((group) => ({
    ...group,
    litres: measurableL(group.litres * over),
    saltG: group.saltG === null ? null : measurableG(group.saltG * over),
  }))
  const salts = groups.flatMap(({ saltG }) => saltG ?? [])
  return {
    groups,
    totalL: measurableL(groups.reduce((sum, group) => sum + group.litres, 0)),
    totalSaltG: salts.length < groups.length ? null : measurableG(salts.reduce((sum, saltG) => sum + saltG, 0)),
  }
}

const namesOf = (needs: readonly { name: string }[]): string => [...new Set(needs.map(({ name }) => name))].join(', ')

function mixSteps({ groups }: Mix): Phrase[] {
  return [
    ...groups.map((group) =>
      group.saltG === null
        ? phrase('{litres} at {salinity}: outside what can be worked out; mix it by your own table.', {
            litres: litres(group.litres),
            salinity: psu(group.salinity),
          })
        : phrase(`{litres} at {salinity}: {salt} salt. For ${namesOf(group.needs)}.`, {
            litres: litres(group.litres),
            salinity: psu(group.salinity),
            salt: grams(group.saltG),
          }),
    ),
    phrase('Salt into purified water with the pump running, never the other way round.'),
    phrase('Let it stir with air and warmth until morning; measure its salinity before it is used.'),
  ]
}

// No vessel is saltier than 45, some 47 g in a litre (Millero et al. 2008), for what cannot be worked out nearer.
const mostSaltGPerL = 50

function mixFields({ totalL, totalSaltG }: Mix): TaskField[] {
  const expectedG = totalSaltG ?? totalL * mostSaltGPerL
  return [
    givenAmountField({
      name: 'litres',
      label: 'Water mixed',
      unit: 'L',
      planned: totalL,
      maximum: Math.max(1000, totalL * 3),
      step: 0.1,
    }),
    numberField({
      name: 'saltG',
      label: 'Salt weighed',
      unit: 'g',
      minimum: 0,
      maximum: Math.max(50_000, expectedG * 3),
      likely: [expectedG / 3, expectedG * 3],
      usual: totalSaltG,
      step: expectedG < 100 ? 0.1 : 1,
    }),
  ]
}

function needLinks(needs: readonly WaterNeed[]): Because[] {
  return needs.map((need, index) =>
    computedLink('the list of tomorrow', null, {
      label: `${need.name}, ${need.purpose}`,
      quantity: litres(need.litres),
      joins: index === 0 ? null : 'plus',
    }),
  )
}

function salinityLinks({ groups }: Mix): Because[] {
  return groups.map((group) =>
    settingLink(group.needs[0]?.subjectId ?? null, 'salinity', {
      label: `salinity of ${namesOf(group.needs)}`,
      quantity: psu(group.salinity),
      joins: 'and',
    }),
  )
}
