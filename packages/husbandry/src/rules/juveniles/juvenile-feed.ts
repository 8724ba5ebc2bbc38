import type { Because, TaskField } from '@fryward/shared'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { spreadRounds } from '../../calendar/rounds.ts'
import { juvenileFeedDefinition } from '../../definitions/juveniles/juvenile-feed.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, settingLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { feedsADayLink } from '../../task/feeds-a-day.ts'
import { choicesField, givenAmountField } from '../../task/fields.ts'
import { animals, days, grams, measurableG } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled, whichFeed } from '../../task/titles.ts'
import { choicesOf, numberOf } from '../../task/values.ts'

const groupSigns = ['not_eating', 'fighting', 'gasping', 'spots_or_wounds'] as const
const groupSignsField = choicesField({
  name: 'signs',
  label: 'Anything off?',
  choices: [
    { value: 'not_eating', label: 'some do not eat' },
    { value: 'fighting', label: 'fighting' },
    { value: 'gasping', label: 'gasping' },
    { value: 'spots_or_wounds', label: 'spots or wounds' },
  ],
})

/**
 * Grams that one young fish weighs at an age, straight between 0.03 g at settling and 0.27 g at about 23 mm (Pietoyo et
 * al. 2020-21), which a young clownfish reaches in about three months; an assumption, for what a pinch weighs.
 */
function assumedWeightG(ageDays: number): number {
  const settled = 0.03
  const grown = { days: 90, weightG: 0.27 }
  return settled + ((grown.weightG - settled) * Math.min(ageDays, 2 * grown.days)) / grown.days
}

export const juvenileFeed = defineRule(juvenileFeedDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const group = groupById(snapshot, subject.id)
    const number = groupNumbers(snapshot, group).now
    if (number === 0) return []
    const rounds = spreadRounds(day, parameters.feedsPerDay)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: group.id, day })
    const ageDays = Math.max(0, daysBetween(group.settledOn, day.date))
    const eachG = assumedWeightG(ageDays)
    const amountG = number === null ? null : feedG(number * eachG * parameters.shareOfWeight, rounds.length)
    return rounds
      .filter((round) => !isDoneInRound(fed, { day, rounds, round }))
      .map((round) => {
        const which = whichFeed(rounds.indexOf(round), rounds.length)
        return {
          roundId: round.id,
          content: taskContent({
            verb: 'feed' as const,
            title:
              amountG === null
                ? titled('pinch', { thing: 'dry food', details: which })
                : titled('give', { amount: grams(amountG), thing: 'dry food', details: which }),
            amount: amountG === null ? null : grams(amountG),
            amountOf: amountG === null ? null : 'dry food',
            steps: [
              phrase('By turns, over the whole surface, so that the small ones get theirs.'),
              phrase('All gone in two minutes, or it was too much: siphon the rest.'),
            ],
            fields: [...(amountG === null ? [] : [givenField(amountG)]), groupSignsField],
            because: [
              ...weightLinks(group.id, { number, ageDays, eachG }),
              parameter('shareOfWeight', 'times'),
              feedsADayLink({
                feeds: rounds.length,
                wanted: parameters.feedsPerDay,
                parameter: parameter('feedsPerDay', 'divided_by'),
              }),
              ...(amountG === null
                ? []
                : [computedLink('to what a scale shows', null, { label: 'a feed', quantity: grams(amountG) })]),
            ],
          }),
          context: { amountG },
        }
      })
  },
  record: ({ content, values, subjectId }) => {
    const amountG = numberOf(values, 'amountG') ?? content.amount?.value
    const signs = choicesOf(values, 'signs', groupSigns)
    return {
      facts: [
        { kind: 'feeding', subjectId, data: { food: 'dry', ...(amountG === undefined ? {} : { amountG }) } },
        ...(signs.length > 0 ? [{ kind: 'observation' as const, subjectId, data: { signs } }] : []),
      ],
    }
  },
})

/** A feed as a scale shows it; null under its first mark, where the pinch is the measure. */
function feedG(dayG: number, feedsPerDay: number): number | null {
  const amountG = measurableG(dayG / feedsPerDay)
  return amountG >= 0.1 ? amountG : null
}

function givenField(amountG: number): TaskField {
  return givenAmountField({
    name: 'amountG',
    label: 'Given',
    unit: 'g',
    planned: amountG,
    maximum: Math.max(100, amountG * 10),
    step: 0.1,
  })
}

/** What the group weighs: how many they are, how old, and what one of that age is taken to weigh. */
function weightLinks(groupId: string, given: { number: number | null; ageDays: number; eachG: number }): Because[] {
  const { number, ageDays, eachG } = given
  return [
    number === null
      ? settingLink(groupId, 'number', { label: 'how many they are', text: 'not known' })
      : computedLink('counts, moves and losses', null, {
          label: 'by the book',
          quantity: animals(number),
          joins: null,
        }),
    settingLink(groupId, 'settled on', { label: 'since settling', quantity: days(ageDays), joins: 'and' }),
    computedLink(
      'weight by age',
      'assumption: 0.03 g at settling to 0.27 g at three months (Pietoyo et al. 2020-21 for the latter)',
      { label: 'a fish of that age weighs about', quantity: grams(Number(eachG.toFixed(2))), joins: 'times' },
    ),
  ]
}
