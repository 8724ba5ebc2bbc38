import type { Because, Phrase } from '@fryward/shared'
import { z } from 'zod'
import { larvalArtemiaFeedDefinition } from '../../definitions/larvae/larval-artemia-feed.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { type ArtemiaFeed, artemiaFeedsAsked } from '../../plans/artemia-need.ts'
import { hatchVessel } from '../../plans/hatch-vessel.ts'
import { weaning } from '../../plans/wean-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, profileLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { givenAmountField, numberField } from '../../task/fields.ts'
import { animals, litres, perMl, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled, whichFeed } from '../../task/titles.ts'
import { numberOf, type Values } from '../../task/values.ts'
import { dryFoodFact, dryFoodField, dryFoodLinks, dryFoodSteps } from './dry-food-parts.ts'

const ContextSchema = z.object({
  nauplii: z.number(),
  vesselId: z.string().nullable(),
  /** Tasks that were kept before dry food was offered with the feed did not say. */
  withDry: z.boolean().default(false),
})

export const larvalArtemiaFeed = defineRule(larvalArtemiaFeedDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const { rounds, asked } = artemiaFeedsAsked(snapshot, batch, day)
    const vessel = hatchVessel(snapshot, day.date)
    const dry = weaning(snapshot, batch, day)
    return asked.map((feed) => {
      const nauplii = roundAnimals(feed.nauplii)
      const which = whichFeed(rounds.indexOf(feed.round), rounds.length)
      // Weaning larvae get their pinch of dry food in the same standing, before the live food.
      const withDry = dry?.withArtemia.some(({ id }) => id === feed.round.id) ? dry : null
      return {
        roundId: feed.round.id,
        content: taskContent({
          verb: 'feed',
          title: titled('give', {
            amount: animals(nauplii),
            thing: 'Artemia nauplii',
            details: [...which, ...(withDry ? [also('dry food first')] : [])],
          }),
          amount: animals(nauplii),
          amountOf: 'newly hatched nauplii',
          steps: [...(withDry ? dryFoodSteps() : []), ...feedSteps(feed, vessel)],
          fields: [...feedFields(nauplii), ...(withDry ? [dryFoodField] : [])],
          because: [
            ...becauseOf(feed, nauplii),
            parameter('stretchDays', 'and'),
            parameter('mostPerMl', 'and'),
            ...(withDry ? dryFoodLinks(withDry, 'and') : []),
          ],
        }),
        context: { nauplii, vesselId: vessel?.id ?? null, withDry: withDry !== null },
      }
    })
  },
  record: ({ context, values, subjectId }) => {
    const { nauplii, vesselId, withDry } = ContextSchema.parse(context)
    const feeding: FactDraft = {
      kind: 'feeding',
      subjectId,
      data: {
        food: 'artemia',
        animals: numberOf(values, 'animals') ?? nauplii,
        ...(vesselId === null ? {} : { fromCultureId: vesselId }),
      },
    }
    return {
      facts: [...leftFacts(subjectId, values), feeding, ...(withDry ? [dryFoodFact(subjectId, values)] : [])],
    }
  },
})

/** What was seen of the last feed, as animals in a litre looked at by eye. */
function leftFacts(subjectId: string, values: Values): FactDraft[] {
  const leftPerMl = numberOf(values, 'leftPerMl')
  if (leftPerMl === undefined) return []
  const animals = [Math.round(leftPerMl * 1000)]
  return [{ kind: 'count', subjectId, data: { of: 'prey_artemia', animals, volumeMl: 1000 } }]
}

function feedSteps({ diet }: ArtemiaFeed, vessel: SnapshotCulture | null): Phrase[] {
  const isFirstDay = diet.day === diet.species.feeding.artemiaFirstDay.value
  return [
    ...(isFirstDay ? [phrase('Their first Artemia: give a little, watch who takes it, keep the rotifers up.')] : []),
    phrase(
      `First nauplii${vessel ? ` of ${vessel.name}` : ''}, shells left behind, rinsed, brought to the tank’s warmth.`,
    ),
    phrase('Measure them by the drop that was counted at the harvest.'),
    phrase('In an hour or two hardly any should be left: then this was right. Many left: give less at the next feed.'),
  ]
}

function feedFields(nauplii: number) {
  return [
    givenAmountField({
      name: 'animals',
      label: 'Nauplii given',
      unit: 'animals',
      planned: nauplii,
      maximum: Math.max(1e6, nauplii * 10),
      step: 1000,
    }),
    numberField({
      name: 'leftPerMl',
      label: 'Left from the last feed',
      unit: 'per_mL',
      minimum: 0,
      maximum: 50,
      likely: [0, 5],
      step: 0.1,
    }),
  ]
}

function becauseOf({ diet, tank, count, targetPerMl }: ArtemiaFeed, nauplii: number): Because[] {
  const { artemiaPerMl, artemiaFirstDay } = diet.species.feeding
  return [
    profileLink(diet.species.tradeName, artemiaPerMl.source.citation, {
      label: 'Artemia to start a feed with',
      quantity: perMl(Number(targetPerMl.toFixed(2))),
    }),
    ...(count ? [factLink(count.fact, { label: 'left, counted', quantity: perMl(count.perMl), joins: 'minus' })] : []),
    settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL), joins: 'times' }),
    computedLink('prey top-up', null, { label: 'to add', quantity: animals(nauplii) }),
    profileLink(diet.species.tradeName, artemiaFirstDay.source.citation, {
      label: 'old at the first Artemia',
      quantity: { value: artemiaFirstDay.value, unit: 'days' },
      joins: 'and',
    }),
  ]
}
