import type { Because, Phrase, Quantity } from '@fryward/shared'
import { juvenileFeedDefinition } from '../../definitions/juveniles/juvenile-feed.ts'
import { type GroupRation, type TankRation, tankRation } from '../../plans/juvenile-ration.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { groupById } from '../../snapshot/by-id.ts'
import { growthOf } from '../../species/juvenile-growth.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../../state/done-in-round.ts'
import { groupNumbers } from '../../state/group-state.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { feedsADayLink } from '../../task/feeds-a-day.ts'
import { choicesField } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { animals, days, grams, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, whichFeed } from '../../task/titles.ts'
import { choicesOf } from '../../task/values.ts'
import { noFoodSteps } from '../parts/no-food-steps.ts'
import {
  MealContextSchema,
  mealContext,
  mealFacts,
  mealFields,
  mealsOf,
  mealTitle,
  stepsOfMeals,
} from './juvenile-meals.ts'

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

export const juvenileFeed = defineRule(juvenileFeedDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const group = groupById(snapshot, subject.id)
    if (groupNumbers(snapshot, group).now === 0) return []
    const ration = tankRation(snapshot, group, day)
    const { groups, rounds, wanted, isSmall } = ration
    // The eldest of a tank stands for all that are fed with it.
    if (groups[0]?.group.id !== group.id) return []
    const meals = mealsOf(ration)
    const fed = factsOnDay(snapshot, 'feeding', { subjectId: group.id, day })
    const noFood = noFoodSteps(snapshot, tankOf(snapshot, group), day)
    return rounds
      .filter((round) => !isDoneInRound(fed, { day, rounds, round }))
      .map((round) => {
        const title = mealTitle(meals, [...whichFeed(rounds.indexOf(round), rounds.length), ...matesTold(groups)])
        return {
          roundId: round.id,
          content: taskContent({
            verb: 'feed' as const,
            title,
            amount: title.amount,
            amountOf: title.amount && title.thing,
            // What is said of all of them, before the heading of any.
            steps: [...noFood, ...moreOftenStep(ration), ...stepsOfMeals(meals, rounds.length)],
            fields: [...mealFields(meals), groupSignsField],
            because: [
              ...groups.flatMap(groupLinks),
              ...meals.map(({ food }) => parameter(shareNames[food][isSmall ? 'small' : 'grown'], 'and')),
              feedsADayLink({
                feeds: rounds.length,
                wanted,
                parameter: parameter(isSmall ? 'smallFeedsPerDay' : 'feedsPerDay', 'divided_by'),
              }),
              ...meals.flatMap(({ feedG }) =>
                feedG === null
                  ? []
                  : [computedLink('to what a scale shows', null, { label: 'a feed', quantity: grams(feedG) })],
              ),
            ],
          }),
          context: mealContext(meals),
        }
      })
  },
  record: ({ context, content, values, subjectId }) => {
    const signs = choicesOf(values, 'signs', groupSigns)
    const plannedG = content.amount?.value ?? null
    return {
      facts: [
        ...mealFacts(MealContextSchema.parse(context), { subjectId, values, plannedG }),
        ...(signs.length > 0 ? [{ kind: 'observation' as const, subjectId, data: { signs } }] : []),
      ],
    }
  },
})

const shareNames = {
  dry: { small: 'smallShare', grown: 'shareOfWeight' },
  frozen: { small: 'smallFrozenShare', grown: 'frozenShare' },
} as const

const matesTold = ([, ...mates]: readonly GroupRation[]) =>
  mates.length > 0 ? [also(`for ${mates.map(({ group }) => group.name).join(', ')} too`)] : []

const moreOftenStep = ({ rounds, wanted }: TankRation): Phrase[] =>
  rounds.length < Math.min(3, wanted)
    ? [
        phrase(
          'Fish this small do better on smaller feeds more often: one more round in the light, or a feeder, helps.',
        ),
      ]
    : []

/** What a group weighs and eats: how many they are, how long, what one of that length weighs, and which part of it. */
function groupLinks({ group, food, number, size, eachG, share: part }: GroupRation): Because[] {
  const { measured, ageDays, lengthMm } = size
  const growth = growthOf(group.species)
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
    computedLink('length by age', growth.lengths.source.citation, {
      label: 'long now, about',
      quantity: mm(lengthMm),
      joins: 'and',
    }),
    computedLink('weight by length', growth.weight.source.citation, {
      label: 'one of that length weighs about',
      quantity: grams(Number(eachG.toPrecision(2))),
      joins: 'times',
    }),
    computedLink('straight by length between small and grown', null, {
      label: `of their weight a day in ${foodName(food)} at that length`,
      quantity: share(Number(part.toFixed(3))),
      joins: 'times',
    }),
  ]
}

const mm = (value: number): Quantity => ({ value: Math.round(value), unit: 'mm' })
