import { z } from 'zod'
import { computedLink, defineRule, type FactDraft, factLink, profileLink, settingLink } from '../../engine/rule.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound, ordinalText } from '../done.ts'
import { givenAmountField, numberField } from '../fields.ts'
import { hatchVessel } from '../live-food/artemia-start.ts'
import { animals, litres, perMl, roundAnimals } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { artemiaFeedId, artemiaFeedParameters, artemiaFeeds } from '../plans/artemia-need.ts'
import { numberOf } from '../values.ts'
import { batchById } from './prey-count.ts'

const ContextSchema = z.object({ nauplii: z.number(), vesselId: z.string().nullable() })

export const larvalArtemiaFeed = defineRule({
  id: artemiaFeedId,
  title: 'Feed Artemia',
  sentence:
    'From the species’ first Artemia day give first nauplii in {feedsPerDay} feeds a day, as many as are eaten within an hour or two, rising over {stretchDays}, never above {mostPerMl}.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: artemiaFeedParameters,
  draft: ({ snapshot, day, subject, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const feeds = artemiaFeeds(snapshot, batch, day)
    const rounds = feeds.map(({ round }) => round)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(
      ({ data }) => data.food === 'artemia',
    )
    const vessel = hatchVessel(snapshot, day.date)
    return feeds
      .filter(({ round, nauplii }) => nauplii > 0 && !isDoneInRound(fed, { day, rounds, round }))
      .map((feed) => {
        const nauplii = roundAnimals(feed.nauplii)
        const { diet, tank, count } = feed
        const isFirstDay = diet.day === diet.species.feeding.artemiaFirstDay.value
        return {
          roundId: feed.round.id,
          content: taskContent({
            verb: 'feed',
            title: phrase(`{amount} Artemia nauplii${ordinalText(rounds.indexOf(feed.round), rounds.length, 'feed')}`, {
              amount: animals(nauplii),
            }),
            amount: animals(nauplii),
            amountOf: 'first nauplii',
            steps: [
              ...(isFirstDay
                ? [phrase('Their first Artemia: give a little, watch who takes it, keep the rotifers up.')]
                : []),
              phrase(
                `First nauplii${vessel ? ` of ${vessel.name}` : ''}, shells left behind, rinsed, brought to the tank’s warmth.`,
              ),
              phrase('Measure them by the drop that was counted at the harvest.'),
              phrase(
                'In an hour or two hardly any should be left: then this was right. Many left: give less at the next feed.',
              ),
            ],
            fields: [
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
            ],
            because: [
              profileLink(diet.species.id, diet.species.feeding.artemiaPerMl.source.citation, {
                label: 'Artemia to start a feed with',
                quantity: perMl(Number(feed.targetPerMl.toFixed(2))),
              }),
              ...(count
                ? [
                    factLink(count.fact, {
                      label: 'left, counted',
                      quantity: perMl(count.perMl),
                      joins: 'minus' as const,
                    }),
                  ]
                : []),
              settingLink(tank.id, 'volume', {
                label: `in ${tank.name}`,
                quantity: litres(tank.volumeL),
                joins: 'times',
              }),
              computedLink('prey top-up', null, { label: 'to add', quantity: animals(nauplii) }),
              profileLink(diet.species.id, diet.species.feeding.artemiaFirstDay.source.citation, {
                label: 'old at the first Artemia',
                quantity: { value: diet.species.feeding.artemiaFirstDay.value, unit: 'days' },
                joins: 'and',
              }),
              parameter('stretchDays', 'and'),
              parameter('mostPerMl', 'and'),
            ],
          }),
          context: { nauplii, vesselId: vessel?.id ?? null },
        }
      })
  },
  record: ({ context, values, subjectId }) => {
    const { nauplii, vesselId } = ContextSchema.parse(context)
    const leftPerMl = numberOf(values, 'leftPerMl')
    const facts: FactDraft[] = [
      {
        kind: 'feeding',
        subjectId,
        data: {
          food: 'artemia',
          animals: numberOf(values, 'animals') ?? nauplii,
          ...(vesselId === null ? {} : { fromCultureId: vesselId }),
        },
      },
    ]
    // What was seen of the last feed, as animals in a litre looked at by eye.
    if (leftPerMl !== undefined) {
      const animals = [Math.round(leftPerMl * 1000)]
      facts.unshift({ kind: 'count', subjectId, data: { of: 'prey_artemia', animals, volumeMl: 1000 } })
    }
    return { facts }
  },
})
