import type { HarvestData, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { larvalPreyTopUpDefinition } from '../../definitions/larvae/larval-prey-top-up.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { preyFeedRounds } from '../../plans/prey-feed-rounds.ts'
import { culturesWithMore, type Spare, topUpPlans } from '../../plans/top-up-plan.ts'
import { goneBeforeNextFeed, type TopUpPlan } from '../../plans/top-up-wanted.ts'
import { defineRule } from '../../rule/rule.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { SnapshotBatch, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { rotifersFed } from '../../state/set-aside.ts'
import { givenAmountField } from '../../task/fields.ts'
import { animals, hours, litres, measurableMl, mL, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'
import { bringOverSteps } from '../parts/bring-over.ts'
import { topUpLinks } from './prey-top-up-why.ts'

const ContextSchema = z.object({
  cultureId: z.string(),
  plannedMl: z.number(),
  /** Alive per mL of culture once sieved. */
  animalsPerMl: z.number(),
  /** Of the culture already harvested today for this batch and not yet fed. */
  harvestedMl: z.number(),
})

export const larvalPreyTopUp = defineRule(larvalPreyTopUpDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const plans = topUpPlans(snapshot, batch, day)
    if (!plans) return []
    const rounds = preyFeedRounds(snapshot, tankOf(snapshot, batch), day)
    const fed = rotifersFed(snapshot, batch, day)
    const diet = larvalDiet(batch, day.date)
    return plans
      .filter(({ round }) => !isDoneInRound(fed, { day, rounds, round }))
      .filter(({ isNeeded, cultureMl }) => isNeeded && measurableMl(cultureMl) > 0)
      .map((plan) => {
        const plannedMl = measurableMl(plan.cultureMl)
        const harvestedMl = plan.setAsideMl
        const others = plan.boundedBy === null ? [] : culturesWithMore(snapshot, [plan.culture.id], day)
        const which = whichFeed(rounds.indexOf(plan.round), rounds.length)
        return {
          roundId: plan.round.id,
          lateAfterMinutes: 60,
          content: taskContent({
            verb: 'feed',
            title: titled('give_from', {
              amount: mL(plannedMl),
              from: plan.culture.name,
              details: [{ kind: 'amount', quantity: animals(roundAnimals(plan.animals)), of: 'rotifers' }, ...which],
            }),
            amount: mL(plannedMl),
            amountOf: `${plan.culture.name}, sieved`,
            steps: stepsFor(plan, { plannedMl, harvestedMl, batch, others }),
            fields: [givenField(plan.culture, plannedMl)],
            because: topUpLinks(plan, { parameter, diet, plannedMl }),
          }),
          context: {
            cultureId: plan.culture.id,
            plannedMl,
            animalsPerMl: plan.animals / plan.cultureMl,
            harvestedMl,
          },
        }
      })
  },
  record: ({ context, values, subjectId }) => {
    const { cultureId, plannedMl, animalsPerMl, harvestedMl } = ContextSchema.parse(context)
    const amountMl = numberOf(values, 'amountMl') ?? plannedMl
    const facts: FactDraft[] = [
      {
        kind: 'feeding',
        subjectId,
        data: { food: 'rotifers', fromCultureId: cultureId, amountMl, animals: Math.round(amountMl * animalsPerMl) },
      },
    ]
    const straightL = Number((Math.max(0, amountMl - harvestedMl) / 1000).toFixed(6))
    // What was not harvested this morning came straight out of the culture just now.
    if (straightL >= 0.001) {
      const parts: HarvestData['parts'] = [{ to: 'larval_batch', subjectId, volumeL: straightL }]
      facts.push({ kind: 'harvest', subjectId: cultureId, data: { volumeL: straightL, parts } })
    }
    return { facts }
  },
})

const boundWords = {
  share: (name: string) =>
    `${name} cannot give it all: no more than half of it in a day, shared between all that eat from it.`,
  floor: (name: string) =>
    `${name} cannot give it all without falling under its floor: what it has is shared between all that eat from it.`,
  plan: (name: string) => `The plan of the food has less for them today than they want, so that ${name} lasts.`,
} as const

/** Why a feed is smaller than they want, and where the rest may be: by name and litres where another culture has it. */
function shortStep({ culture, boundedBy }: TopUpPlan, { others, batch }: About): Phrase[] {
  if (boundedBy === null) return []
  const why = boundWords[boundedBy](culture.name)
  const [most] = others
  if (boundedBy === 'plan') return [phrase(`${why} Food ahead says what can be done about the rest.`)]
  if (!most) return [phrase(`${why} No other culture has any left today: Food ahead says what can be done.`)]
  return [
    phrase(
      `${why} ${most.culture.name} can give {rest} more today: write a harvest of it for ${batch.name} on its page, and the feeds here count on it.`,
      { rest: litres(most.leftL) },
    ),
  ]
}

/** What was really taken, in steps of what it is measured with. */
function givenField(culture: SnapshotCulture, plannedMl: number): TaskField {
  return givenAmountField({
    name: 'amountMl',
    label: `Of ${culture.name}`,
    unit: 'mL',
    planned: plannedMl,
    maximum: culture.volumeL * 500,
    step: plannedMl < 10 ? 0.1 : plannedMl < 60 ? 0.5 : 10,
  })
}

type About = {
  plannedMl: number
  harvestedMl: number
  batch: SnapshotBatch
  others: readonly Spare[]
}

function stepsFor(plan: TopUpPlan, about: About): Phrase[] {
  const { culture } = plan
  const { plannedMl, harvestedMl, batch } = about
  return [
    plan.residual.kind === 'counted' || plan.residual.kind === 'none-fed'
      ? phrase('Check by eye that there is room for them: bellies and water.')
      : phrase('Count what is left first: the amount follows from it, and this one only stands in.'),
    harvestedMl >= plannedMl
      ? phrase(`Take {amount} of what was harvested from ${culture.name} for ${batch.name} today.`, {
          amount: mL(plannedMl),
        })
      : phrase(`Take {amount} out of ${culture.name}, or of its harvest when that is done.`, { amount: mL(plannedMl) }),
    phrase('Sieve, rinse, and resuspend in water from the larvae’s tank: culture water never goes into larvae.'),
    ...bringOverSteps({ from: culture, to: plan.tank, volumeL: plannedMl / 1000 }),
    phrase('Spread them over the surface, with the air gentle.'),
    ...shortStep(plan, about),
    ...goneStep(plan, batch),
  ]
}

/** More than the water may hold is wanted: somebody has to come once more. */
function goneStep(plan: TopUpPlan, batch: SnapshotBatch): Phrase[] {
  const gone = plan.boundedBy === null ? goneBeforeNextFeed(plan) : null
  if (!gone) return []
  return [
    phrase(
      `By what they ate lately this will be gone after about {after}, {before} of light before the next feed: feed once more in between and write it down on the page of ${batch.name}, or give part of them another tank.`,
      { after: hours(Math.round(gone.afterHours)), before: hours(Math.round(gone.beforeHours)) },
    ),
  ]
}
