import type { Because, Phrase } from '@fryward/shared'
import { z } from 'zod'
import { addHours } from '../../calendar/elapsed.ts'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { spreadRounds } from '../../calendar/rounds.ts'
import { copepodFeedDefinition } from '../../definitions/copepods/copepod-feed.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { feedsADayLink } from '../../task/feeds-a-day.ts'
import { givenAmountField } from '../../task/fields.ts'
import { type MeasuredDose, measuredDose } from '../../task/measured-dose.ts'
import { litres, measurableMl, mL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'
import { signFacts, signsField, waterField, waterLookOf } from '../parts/culture-signs.ts'
import { type Algae, algaeFor } from './copepod-algae.ts'

const ContextSchema = z.object({
  food: z.enum(['concentrate', 'live_microalgae']),
  algaeId: z.string(),
  plannedMl: z.number(),
  dilution: z.number(),
})
// Live algae come with their water: never so much that the vessel has to be emptied for it. common practice
const mostOfVessel = 0.2
// Water still green at the feed has most of yesterday's cells in it. common practice
const stillGreenShare = 0.5
/** No single day takes more than half of a culture of algae, whatever is fed from it. common practice */
const mostOfCulture = 0.5
// What was seen of the water counts for three days of feeds, as with rotifers. common practice
const looksCountHours = 72

export const copepodFeed = defineRule(copepodFeedDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'copepod') return []
    const rounds = spreadRounds(day, parameters.feedsPerDay)
    const given = factsOnDay(snapshot, 'feeding', { subjectId: culture.id, day })
    const asked = rounds
      .filter((round) => round.startsAt >= culture.startedAt)
      .filter((round) => !isDoneInRound(given, { day, rounds, round }))
    if (asked.length === 0) return []
    const algae = algaeFor(snapshot, culture, day)
    const wanted = shareWanted(snapshot, culture, { day, eatenShare: parameters.eatenShare })
    const cells = (parameters.cellsPerMl * culture.volumeL * 1000 * wanted.share) / rounds.length
    const mostMl = mostAFeedMl(algae, { culture, feedsPerDay: rounds.length })
    const dose = doseOf(algae, { cells, mostMl })
    const isShort = cells / algae.cellsPerMl > mostMl
    const what = dose.dilution > 1 ? `${algae.name} diluted 1 in ${dose.dilution}` : algae.name
    const because: Because[] = [
      parameter('cellsPerMl'),
      settingLink(culture.id, 'volume', { label: 'in it', quantity: litres(culture.volumeL), joins: 'times' }),
      ...(wanted.isAfterAFeed ? [parameter('eatenShare', 'times')] : []),
      ...wanted.because,
      algae.because,
      feedsADayLink({
        feeds: rounds.length,
        wanted: parameters.feedsPerDay,
        parameter: parameter('feedsPerDay', 'divided_by'),
      }),
      computedLink('algae by cells', null, {
        label: `a feed, to what a syringe or jug shows${dose.dilution > 1 ? `, diluted 1 in ${dose.dilution}` : ''}`,
        quantity: mL(dose.amountMl),
      }),
    ]
    return asked.map((round) => ({
      roundId: round.id,
      content: taskContent({
        verb: 'feed',
        title: titled('give', {
          amount: mL(dose.amountMl),
          thing: what,
          details: whichFeed(rounds.indexOf(round), rounds.length),
        }),
        amount: mL(dose.amountMl),
        amountOf: what,
        steps: feedSteps(algae, { dose, isShort }),
        fields: [
          waterField,
          signsField,
          givenAmountField({
            name: 'amountMl',
            label: `Given, of ${what}`,
            unit: 'mL',
            planned: dose.amountMl,
            maximum: Math.min(
              (algae.volumeL ?? Number.POSITIVE_INFINITY) * 1000,
              Math.max(10, culture.volumeL * 1000 * mostOfVessel),
            ),
            step: 0.1,
          }),
        ],
        because,
      }),
      context: { food: algae.food, algaeId: algae.id, plannedMl: dose.amountMl, dilution: dose.dilution },
    }))
  },
  record: ({ context, values, subjectId }) => {
    const { food, algaeId, plannedMl, dilution } = ContextSchema.parse(context)
    const amountMl = (numberOf(values, 'amountMl') ?? plannedMl) / dilution
    return { facts: [...feedingFacts({ food, algaeId, amountMl, subjectId }), ...signFacts(subjectId, values)] }
  },
})

/** What one feed may take of live algae, by the vessel it goes into and the culture it comes out of; a bottle has no such end. */
function mostAFeedMl(algae: Algae, given: { culture: SnapshotCulture; feedsPerDay: number }): number {
  if (algae.volumeL === null) return Number.POSITIVE_INFINITY
  const { culture, feedsPerDay } = given
  return Math.max(0, Math.min(culture.volumeL * mostOfVessel, (algae.volumeL * mostOfCulture) / feedsPerDay)) * 1000
}

function doseOf(algae: Algae, { cells, mostMl }: { cells: number; mostMl: number }): MeasuredDose {
  const wantedMl = cells / algae.cellsPerMl
  if (algae.food === 'concentrate') return measuredDose(wantedMl)
  return { amountMl: Math.max(0.1, measurableMl(Math.min(wantedMl, mostMl))), dilution: 1 }
}

function feedSteps(algae: Algae, given: { dose: MeasuredDose; isShort: boolean }): Phrase[] {
  const { amountMl, dilution } = given.dose
  return [
    phrase(
      'Look at the water first: tinted is right. Still green: give half of it. Clear: say so, tomorrow’s is more.',
    ),
    ...(algae.food === 'concentrate'
      ? [phrase(`Shake ${algae.name} gently and put it back in the cold at once.`)]
      : [phrase(`Swirl ${algae.name}; as much water out of the culture first, through the fine sieve.`)]),
    ...(dilution > 1
      ? [phrase(`Stir 1 mL of it into ${dilution - 1} mL of culture water: that is 1 in ${dilution}.`)]
      : []),
    phrase('Pour {amount} in near the air, which only just turns the water over: they are battered by big bubbles.', {
      amount: mL(amountMl),
    }),
    ...(given.isShort
      ? [phrase(`${algae.name} cannot give it all at one feed: for more, say which concentrate feeds this culture.`)]
      : []),
  ]
}

function feedingFacts(input: {
  food: Algae['food']
  algaeId: string
  amountMl: number
  subjectId: string
}): FactDraft[] {
  const { food, algaeId, amountMl, subjectId } = input
  if (food === 'concentrate') return [{ kind: 'feeding', subjectId, data: { food, concentrateId: algaeId, amountMl } }]
  const volumeL = Number((amountMl / 1000).toFixed(6))
  return [
    { kind: 'feeding', subjectId, data: { food, fromCultureId: algaeId, amountMl } },
    { kind: 'harvest', subjectId: algaeId, data: { volumeL, parts: [{ to: 'culture', subjectId, volumeL }] } },
  ]
}

/** The share of the full density that this day's food makes up for, by what was seen of the water. */
function shareWanted(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, eatenShare }: { day: HusbandryDay; eatenShare: number },
): { share: number; isAfterAFeed: boolean; because: Because[] } {
  const hasFed = factsUntil(snapshot, 'feeding', { subjectId: culture.id, until: day.startsAt }).length > 0
  if (!hasFed) return { share: 1, isAfterAFeed: false, because: [] }
  const since = addHours(day.startsAt, -looksCountHours)
  const looks = factsUntil(snapshot, 'observation', { subjectId: culture.id, until: day.startsAt })
  const last = looks.findLast((fact) => fact.at >= since && waterLookOf(fact) !== null)
  const water = last ? waterLookOf(last) : null
  if (last && water === 'clear') {
    const because = [factLink(last, { label: 'water clear, nothing left', text: 'all of it again', joins: 'and' })]
    return { share: 1, isAfterAFeed: false, because }
  }
  if (last && water === 'green') {
    const because = [factLink(last, { label: 'water still green', quantity: share(stillGreenShare), joins: 'times' })]
    return { share: eatenShare * stillGreenShare, isAfterAFeed: true, because }
  }
  return { share: eatenShare, isAfterAFeed: true, because: [] }
}
