import type { Because, Phrase, Quantity, TaskField } from '@fryward/shared'
import { z } from 'zod'
import { juvenileFeedDefinition } from '../../definitions/juveniles/juvenile-feed.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { type GroupRation, type TankRation, tankRation } from '../../plans/juvenile-ration.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { growthSource, weightSource } from '../../species/juvenile-growth.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { feedsADayLink } from '../../task/feeds-a-day.ts'
import { choicesField, givenAmountField } from '../../task/fields.ts'
import { animals, days, grams, measurableG, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled, whichFeed } from '../../task/titles.ts'
import { choicesOf, numberOf } from '../../task/values.ts'
import { frozenInstead } from '../parts/frozen-food.ts'
import { noFoodSteps } from '../parts/no-food-steps.ts'

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

const ContextSchema = z.object({
  /** Each group in the tank with its part of what is given; tasks kept before a tank was fed as one did not say. */
  parts: z.array(z.object({ groupId: z.string(), share: z.number() })).default([]),
})

export const juvenileFeed = defineRule(juvenileFeedDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const group = groupById(snapshot, subject.id)
    if (groupNumbers(snapshot, group).now === 0) return []
    const ration = tankRation(snapshot, group, day)
    const { groups, rounds, wanted, isSmall } = ration
    // The eldest of a tank stands for all that are fed with it.
    if (groups[0]?.group.id !== group.id) return []
    const dayG = sumG(groups)
    const amountG = dayG === null ? null : feedG(dayG, rounds.length)
    const amount = amountG === null ? null : grams(amountG)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: group.id, day })
    const noFood = noFoodSteps(snapshot, tankOf(snapshot, group), day)
    return rounds
      .filter((round) => !isDoneInRound(fed, { day, rounds, round }))
      .map((round) => ({
        roundId: round.id,
        content: taskContent({
          verb: 'feed' as const,
          title: titled(amount ? 'give' : 'pinch', {
            amount,
            thing: 'dry food',
            details: [...whichFeed(rounds.indexOf(round), rounds.length), ...matesTold(groups)],
          }),
          amount,
          amountOf: amount && 'dry food',
          steps: [
            ...noFood,
            ...frozenInstead(groups.map(({ group: { species } }) => species)),
            ...feedSteps(ration, { dayG, isWeighed: amount !== null }),
          ],
          fields: [...(amountG === null ? [] : [givenField(amountG)]), groupSignsField],
          because: [
            ...groups.flatMap(groupLinks),
            parameter(isSmall ? 'smallShare' : 'shareOfWeight', 'and'),
            feedsADayLink({
              feeds: rounds.length,
              wanted,
              parameter: parameter(isSmall ? 'smallFeedsPerDay' : 'feedsPerDay', 'divided_by'),
            }),
            ...(amount ? [computedLink('to what a scale shows', null, { label: 'a feed', quantity: amount })] : []),
          ],
        }),
        context: { parts: partsOf(groups, dayG) },
      }))
  },
  record: ({ context, content, values, subjectId }) => {
    const { parts } = ContextSchema.parse(context)
    const amountG = numberOf(values, 'amountG') ?? content.amount?.value
    const signs = choicesOf(values, 'signs', groupSigns)
    const fed = parts.length > 0 ? parts : [{ groupId: subjectId, share: 1 }]
    return {
      facts: [
        ...fed.map((part) => feeding(part.groupId, amountG === undefined ? undefined : amountG * part.share)),
        ...(signs.length > 0 ? [{ kind: 'observation' as const, subjectId, data: { signs } }] : []),
      ],
    }
  },
})

function feeding(subjectId: string, amountG: number | undefined): FactDraft {
  const weighed = amountG === undefined ? 0 : Number(amountG.toFixed(3))
  return { kind: 'feeding', subjectId, data: { food: 'dry', ...(weighed > 0 ? { amountG: weighed } : {}) } }
}

/** Grams of the whole tank; null while nobody has said how many any of its groups are. */
function sumG(groups: readonly GroupRation[]): number | null {
  const known = groups.flatMap(({ dayG }) => (dayG === null ? [] : [dayG]))
  return known.length === groups.length ? known.reduce((sum, dayG) => sum + dayG, 0) : null
}

const partsOf = (groups: readonly GroupRation[], dayG: number | null) =>
  groups.map(({ group, dayG: own }) => ({
    groupId: group.id,
    share: dayG === null || dayG === 0 || own === null ? 1 / groups.length : own / dayG,
  }))

const matesTold = ([, ...mates]: readonly GroupRation[]) =>
  mates.length > 0 ? [also(`for ${mates.map(({ group }) => group.name).join(', ')} too`)] : []

/** A feed as a scale shows it; null under its first mark, where the pinch is the measure. */
function feedG(dayG: number, feedsPerDay: number): number | null {
  const amountG = measurableG(dayG / feedsPerDay)
  return amountG >= 0.1 ? amountG : null
}

function feedSteps(
  { rounds, wanted }: TankRation,
  { dayG, isWeighed }: { dayG: number | null; isWeighed: boolean },
): Phrase[] {
  const weekG = dayG === null ? 0 : measurableG(dayG * 7)
  const feedsAWeek: Quantity = { value: rounds.length * 7, unit: 'feeds' }
  return [
    ...(!isWeighed && weekG >= 0.1
      ? [
          phrase('How much a pinch is: {week} weighed into a jar lasts them a week, {feeds}.', {
            week: grams(weekG),
            feeds: feedsAWeek,
          }),
        ]
      : []),
    phrase('A little at a time, over the whole surface, so that the small ones get theirs.'),
    phrase('All gone in two minutes, or it was too much: siphon the rest.'),
    ...(rounds.length < Math.min(3, wanted)
      ? [
          phrase(
            'Fish this small do better on smaller feeds more often: one more round in the light, or a feeder, helps.',
          ),
        ]
      : []),
  ]
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

/** What a group weighs and eats: how many they are, how long, what one of that length weighs, and which part of it. */
function groupLinks({ group, number, size, eachG, share: part }: GroupRation): Because[] {
  const { measured, ageDays, lengthMm } = size
  return [
    number === null
      ? settingLink(group.id, 'number', { label: `how many ${group.name} are`, text: 'not known', joins: 'and' })
      : computedLink('counts, moves and losses', null, {
          label: `in ${group.name} by the book`,
          quantity: animals(number),
          joins: 'and',
        }),
    ...(measured
      ? [
          factLink(measured, {
            label: 'last measured',
            quantity: mm(measured.data.lengthMm ?? 0),
            joins: 'and' as const,
          }),
        ]
      : [settingLink(group.id, 'hatch or settling', { label: 'old', quantity: days(ageDays), joins: 'and' as const })]),
    computedLink('length by age', growthSource, { label: 'long now, about', quantity: mm(lengthMm), joins: 'and' }),
    computedLink('weight by length', weightSource, {
      label: 'one of that length weighs about',
      quantity: grams(Number(eachG.toPrecision(2))),
      joins: 'times',
    }),
    computedLink('straight by length between small and grown', null, {
      label: 'of their weight a day at that length',
      quantity: share(Number(part.toFixed(3))),
      joins: 'times',
    }),
  ]
}

const mm = (value: number): Quantity => ({ value: Math.round(value), unit: 'mm' })
