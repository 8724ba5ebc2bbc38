import { DEFAULT_SIEVING_LOSS } from '@fryward/live-feed'
import { type Because, HarvestPartSchema, type Phrase } from '@fryward/shared'
import { z } from 'zod'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { firstRound } from '../../calendar/rounds.ts'
import { rotiferHarvestDefinition } from '../../definitions/live-food/rotifer-harvest.ts'
import { type HarvestPlan, harvestPlan } from '../../plans/harvest-plan.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, planLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { cultureStartDate } from '../../state/culture-state.ts'
import { releaseCautions } from '../../task/cautions.ts'
import { litres, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, destinationsOf, titled } from '../../task/titles.ts'
import { partsOf } from '../../task/values.ts'
import { harvestFacts, litresOf, partSteps, partsField, restIn, suggestParts } from './harvest-parts.ts'
import { filledField, fillFacts, fillSteps, isFilledUp } from './harvest-refill.ts'

const ContextSchema = z.object({
  parts: z.array(HarvestPartSchema),
  /** Alive per litre after sieving, to say how many animals a new culture got. */
  animalsPerL: z.number(),
  /** Tasks that were kept before harvests were filled up at once did not say. */
  fillsUp: z.boolean().default(false),
})

// About 50 um keeps the eggs: ICAR e-course (stock culture of rotifers), text of FAO Fish. Tech. Pap. 361.
const sieveUm = 50

const boundWords: Record<HarvestPlan['advice']['boundedBy'], string> = {
  age: 'too young',
  density: 'too thin',
  trend: 'falling',
  sustainable: 'to the density at which it gives most over weeks',
  floor: 'held above the floor',
  usual: 'the usual share, while its counts are few',
  maximum: 'the most that may be taken',
}

export const rotiferHarvest = defineRule(rotiferHarvestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    const plan = harvestPlan(snapshot, culture, day)
    if ('why' in plan) {
      const ageDays = daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
      if (plan.why === 'count-first' && ageDays >= parameters.firstHarvestAgeDays)
        throw new Gap(`Count ${culture.name}: its last count is too old to harvest by.`)
      return []
    }
    if (plan.litres <= 0) return []
    const parts = suggestParts({ snapshot, culture, day, plan, rest: restIn(snapshot, parameters.restGoesTo) })
    const fillsUp = isFilledUp(snapshot, plan.litres)
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'harvest',
          title: titled('take_out', {
            amount: litres(plan.litres),
            to: destinationsOf(parts),
            details: fillsUp ? [also('new water in')] : [],
          }),
          amount: litres(plan.litres),
          amountOf: 'culture',
          steps: [
            ...sieveSteps(plan.litres),
            ...partSteps(snapshot, culture, parts),
            ...(fillsUp ? fillSteps(culture) : []),
            phrase(`Rinse the sieve; it stays with ${culture.name}.`),
          ],
          cautions: parts.some(({ to }) => to === 'drain') ? releaseCautions : [],
          fields: [partsField(culture, parts), ...(fillsUp ? [filledField(culture, plan.litres)] : [])],
          because: becauseOf(culture, plan, parameter),
        }),
        context: {
          parts: parts.map(({ name: _name, ...part }) => part),
          animalsPerL: plan.density.densityPerMl * 1000 * (1 - DEFAULT_SIEVING_LOSS),
          fillsUp,
        },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { parts: planned, animalsPerL, fillsUp } = ContextSchema.parse(context)
    const parts = partsOf(values, 'parts') ?? planned
    const takenL = litresOf(parts)
    const filled = fillsUp ? fillFacts(subjectId, { values, takenL }) : []
    return { facts: [...harvestFacts({ subjectId, parts, animalsPerL }), ...filled] }
  },
})

function sieveSteps(takenL: number): Phrase[] {
  return [
    phrase('Count first, then take it, then feed. Stop the air for a few minutes so that dirt settles.'),
    phrase('Run {amount} through a sieve of {mesh}, kept under water.', {
      amount: litres(takenL),
      mesh: { value: sieveUm, unit: 'um' },
    }),
    phrase('Rinse with clean water of the same salinity, and resuspend: culture water never goes into larvae.'),
  ]
}

function becauseOf(
  culture: SnapshotCulture,
  plan: HarvestPlan,
  parameter: (name: keyof typeof rotiferHarvestDefinition.parameters & string, joins?: Because['joins']) => Because,
): Because[] {
  return [
    ...plan.density.because,
    parameter('dailyShare', 'and'),
    settingLink(culture.id, 'volume', {
      label: 'in it',
      quantity: litres(culture.volumeL),
      joins: 'and',
    }),
    plan.order
      ? planLink(plan.order.madeAt, { label: 'for today: eaten and thinned', quantity: litres(plan.order.litres) })
      : computedLink(
          'harvest advice',
          'a steady stock gives most (Reed 1979, J. Environ. Econ. Manage. 6:350-363; from memory); the rest common practice',
          {
            label: `for today: ${boundWords[plan.advice.boundedBy]}`,
            quantity: share(Number(plan.advice.shareOfVolume.toFixed(3))),
            joins: 'times',
          },
        ),
    ...(plan.takenToday.length > 0
      ? [
          computedLink('harvests of today', null, {
            label: 'taken already today',
            quantity: litres(plan.takenToday.reduce((sum, fact) => sum + fact.data.volumeL, 0)),
            joins: 'minus',
          }),
        ]
      : []),
    computedLink('rounded down to a jug’s mark', null, { label: 'to take', quantity: litres(plan.litres) }),
  ]
}
