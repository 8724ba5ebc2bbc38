import type { Because, Phrase, Quantity, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { larvalArtemiaFeedDefinition } from '../../definitions/larvae/larval-artemia-feed.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { vesselToFeedFrom } from '../../plans/artemia-hatch.ts'
import { type ArtemiaFeed, artemiaFeedsAsked } from '../../plans/artemia-need.ts'
import { jarShare } from '../../plans/jar-share.ts'
import { naupliiJar } from '../../plans/nauplii-jar.ts'
import { weaning } from '../../plans/wean-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, profileLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { weanedFoods } from '../../species/schema.ts'
import { givenAmountField, numberField } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { animals, litres, measurableMl, mL, perMl, roundAnimals, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled, whichFeed } from '../../task/titles.ts'
import { numberOf, type Values } from '../../task/values.ts'
import { weanedFoodFact, weanedFoodField, weanedFoodLinks, weanedFoodSteps } from './weaned-food-parts.ts'

const ContextSchema = z.object({
  nauplii: z.number(),
  vesselId: z.string().nullable(),
  /** Nauplii per mL of the jar; null when nobody has counted it, and the feed is by number. */
  perMl: z.number().nullable().default(null),
  /** What they are weaned to goes first. Tasks that were kept before it was offered with the feed did not say. */
  withDry: z.boolean().default(false),
  /** Nor, before frozen food was one of its own, which it is. */
  weanedTo: z.enum(weanedFoods).default('dry'),
})

export const larvalArtemiaFeed = defineRule(larvalArtemiaFeedDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const { rounds, asked } = artemiaFeedsAsked(snapshot, batch, day)
    const vessel = vesselToFeedFrom(snapshot, day)
    const counted = vessel && naupliiJar(snapshot, vessel, day)
    const isUsedUp = counted?.leftMl != null && counted.leftMl < leastMl
    const jar = isUsedUp ? null : counted
    const part = jar ? jarShare(snapshot, jar, day) : 1
    const weaned = weaning(snapshot, batch, day)
    return asked.map((feed) => {
      const given = part * feed.nauplii
      const nauplii = roundAnimals(given)
      const which = whichFeed(rounds.indexOf(feed.round), rounds.length)
      // Weaning larvae get their pinch of that in the same standing, before the live food.
      const first = weaned?.withArtemia.some(({ id }) => id === feed.round.id) ? weaned : null
      const amount = jar && vessel ? jarAmount(given / jar.perMl, vessel) : animals(nauplii)
      return {
        roundId: feed.round.id,
        lateAfterMinutes: 60,
        content: taskContent({
          verb: 'feed',
          title: titled('give', {
            amount,
            thing: jar && vessel ? `of the nauplii of ${vessel.name}` : 'Artemia nauplii',
            details: [...which, ...(first ? [also(`${foodName(first.food)} first`)] : [])],
          }),
          amount,
          amountOf: jar ? 'nauplii, as counted' : 'newly hatched nauplii',
          steps: [
            ...(first ? weanedFoodSteps(first) : []),
            ...feedSteps(feed, { vessel, nauplii, isCounted: jar !== null, isUsedUp, isShort: part < nearlyAll }),
          ],
          fields: [...feedFields(amount), ...(first ? [weanedFoodField(first.food)] : [])],
          because: [
            ...becauseOf(feed, parameter),
            ...(jar
              ? [
                  ...(part < nearlyAll
                    ? [
                        computedLink('what the jar still holds, alike for all that eat of it', null, {
                          label: 'of it, as far as the jar goes',
                          quantity: share(Number(part.toFixed(2))),
                          joins: 'times' as const,
                        }),
                      ]
                    : []),
                  factLink(jar.fact, {
                    label: 'in the jar, counted',
                    quantity: perMl(Math.round(jar.perMl)),
                    joins: 'divided_by' as const,
                  }),
                  computedLink('to what a syringe shows', null, { label: 'to give', quantity: amount }),
                ]
              : []),
            parameter('hoursBeforeDark', 'and'),
            parameter('stretchDays', 'and'),
            parameter('mostPerMl', 'and'),
            ...(first ? weanedFoodLinks(first, 'and') : []),
          ],
        }),
        context: {
          ...{ nauplii, vesselId: vessel?.id ?? null, perMl: jar?.perMl ?? null },
          ...{ withDry: first !== null, weanedTo: first?.food ?? 'dry' },
        },
      }
    })
  },
  record: ({ context, content, values, subjectId }) => {
    const { nauplii, vesselId, perMl, withDry, weanedTo } = ContextSchema.parse(context)
    const amountMl = numberOf(values, 'amountMl') ?? content.amount?.value
    const given =
      perMl === null || amountMl === undefined
        ? { animals: numberOf(values, 'animals') ?? nauplii }
        : { amountMl, animals: Math.round(amountMl * perMl) }
    const feeding: FactDraft = {
      kind: 'feeding',
      subjectId,
      data: { food: 'artemia', ...given, ...(vesselId === null ? {} : { fromCultureId: vesselId }) },
    }
    return {
      facts: [
        ...leftFacts(subjectId, values),
        feeding,
        ...(withDry ? [weanedFoodFact(subjectId, { food: weanedTo, values })] : []),
      ],
    }
  },
})

// With less left than that a jar is empty. common practice
const leastMl = 5
// A tenth is a jar's error. common practice
const nearlyAll = 0.9

/** What a syringe shows, and no more than the hatch can hold: a jar that thin has no more to give. */
const jarAmount = (wantedMl: number, vessel: SnapshotCulture): Quantity =>
  mL(Math.max(0.1, measurableMl(Math.min(wantedMl, vessel.volumeL * 1000))))

/** What was seen of the last feed, as animals in a litre looked at by eye. */
function leftFacts(subjectId: string, values: Values): FactDraft[] {
  const leftPerMl = numberOf(values, 'leftPerMl')
  if (leftPerMl === undefined) return []
  const animals = [Math.round(leftPerMl * 1000)]
  return [{ kind: 'count', subjectId, data: { of: 'prey_artemia', animals, volumeMl: 1000 } }]
}

function feedSteps(
  { diet }: ArtemiaFeed,
  given: { vessel: SnapshotCulture | null; nauplii: number; isCounted: boolean; isUsedUp: boolean; isShort: boolean },
): Phrase[] {
  const { vessel, nauplii, isCounted, isUsedUp, isShort } = given
  const isFirstDay = diet.day === diet.species.feeding.artemiaFirstDay.value
  return [
    ...(isFirstDay
      ? [
          phrase(
            diet.species.feeding.rotifersPerMl.value === null
              ? 'Their first food: watch who takes it.'
              : 'Their first Artemia: give a little, watch who takes it, keep the rotifers up.',
          ),
        ]
      : []),
    phrase(
      `Newly hatched nauplii${vessel ? ` of ${vessel.name}` : ''}, shells left behind, rinsed, brought to the tank’s warmth.`,
    ),
    ...(isShort
      ? [phrase('The jar does not hold all that is wanted until the next hatch: everybody gets the same part of it.')]
      : []),
    ...(isUsedUp
      ? [phrase('By what was written down the jar is used up: look at it, and write down what was really given.')]
      : []),
    ...(isCounted
      ? [phrase('Stir the jar, then draw it up: that is about {number}.', { number: animals(nauplii) })]
      : []),
    // A jar that is used up by its book stays so however often it is counted.
    ...(vessel && !isCounted && !isUsedUp
      ? [phrase('Count the jar first, on the page of its hatch: then this is said in mL.')]
      : []),
    phrase('In an hour or two hardly any should be left: then this was right. Many left: give less at the next feed.'),
  ]
}

function feedFields(planned: Quantity): TaskField[] {
  const isByMl = planned.unit === 'mL'
  return [
    givenAmountField({
      name: isByMl ? 'amountMl' : 'animals',
      label: 'Nauplii given',
      unit: planned.unit,
      planned: planned.value,
      maximum: Math.max(isByMl ? 100 : 1e6, planned.value * 10),
      step: isByMl ? 0.1 : 1000,
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

type FeedParameter = (
  name: keyof typeof larvalArtemiaFeedDefinition.parameters & string,
  joins?: Because['joins'],
) => Because

function becauseOf(feed: ArtemiaFeed, parameter: FeedParameter): Because[] {
  const { diet, tank, count, likelyLeft, targetPerMl, larvae, share: ofIt } = feed
  const { artemiaPerMl, artemiaFirstDay } = diet.species.feeding
  return [
    ...(larvae === null
      ? []
      : [
          computedLink('hatched, moves, losses and counts', null, {
            label: 'larvae by the book',
            quantity: animals(larvae),
            joins: null,
          }),
          parameter('perLarvaPerDay', 'and'),
        ]),
    profileLink(diet.species.tradeName, artemiaPerMl.source.citation, {
      label: 'Artemia to start a feed with',
      quantity: perMl(Number(targetPerMl.toFixed(2))),
      joins: 'and',
    }),
    ...(ofIt < 1
      ? [
          computedLink(`days that nearly all have taken ${foodName(diet.species.feeding.weanedTo.value)}`, null, {
            label: `of it, as they take ${foodName(diet.species.feeding.weanedTo.value)}`,
            quantity: share(Number(ofIt.toFixed(2))),
            joins: 'and',
          }),
          parameter('taperDays', 'and'),
        ]
      : []),
    ...(count ? [factLink(count.fact, { label: 'left, counted', quantity: perMl(count.perMl), joins: 'minus' })] : []),
    ...(likelyLeft > 0
      ? [
          computedLink('last look, feeds since, what they were seen to eat', null, {
            label: 'likely left',
            quantity: perMl(Number(likelyLeft.toFixed(2))),
            joins: 'minus' as const,
          }),
        ]
      : []),
    settingLink(tank.id, 'volume', { label: `in ${tank.name}`, quantity: litres(tank.volumeL), joins: 'times' }),
    computedLink('prey top-up', null, { label: 'to add', quantity: animals(roundAnimals(feed.nauplii)) }),
    profileLink(diet.species.tradeName, artemiaFirstDay.source.citation, {
      label: 'old at the first Artemia',
      quantity: { value: artemiaFirstDay.value, unit: 'days' },
      joins: 'and',
    }),
  ]
}
