import type { foods, Phrase, TaskField } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { pairFeedDefinition } from '../../definitions/broodstock/pair-feed.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { type EggLook, eggLookDue } from '../../plans/egg-look-plan.ts'
import { eggLookFeed, pairFeedRounds } from '../../plans/pair-feed-plan.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { settingLink } from '../../rule/why.ts'
import { pairById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotPair } from '../../snapshot/room-snapshot.ts'
import { findSpecies } from '../../species/index.ts'
import { weanedFoodOf } from '../../species/weaned-food.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { choiceField, choicesField, noteField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled, whichFeed } from '../../task/titles.ts'
import { choiceOf, choicesOf, textOf, type Values } from '../../task/values.ts'
import { mealSteps } from '../parts/meal-steps.ts'
import { noFoodSteps } from '../parts/no-food-steps.ts'
import {
  eggLookFields,
  eggLookLinks,
  eggLookOutcome,
  eggLookSteps,
  LaidAtSchema,
  laidAtNoon,
} from './egg-look-parts.ts'

const pairFoods = ['frozen', 'dry', 'fresh'] as const satisfies readonly (typeof foods)[number][]
const pairSigns = ['not_eating', 'fighting', 'gasping', 'spots_or_wounds'] as const
const ContextSchema = z.object({
  food: z.enum(pairFoods),
  /** Tasks that were kept before eggs were looked for with a feed did not say. */
  looksForEggs: z.boolean().default(false),
  /** Nor, before eggs were stamped by day, when those found were laid. */
  laidAt: LaidAtSchema.nullable().default(null),
})

export const pairFeed = defineRule(pairFeedDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const pair = pairById(snapshot, subject.id)
    const { rounds, asked } = pairFeedRounds(snapshot, pair, day)
    const withLook = lookWithFeed(snapshot, pair, day)
    const isSlow = weanedFoodOf(pair.species) === 'frozen'
    const noFood = noFoodSteps(snapshot, tankOf(snapshot, pair), day)
    return asked.map((round) => {
      const index = rounds.indexOf(round)
      const food: (typeof pairFoods)[number] = parameters.varied && index % 2 === 1 && !isSlow ? 'dry' : 'frozen'
      const look = withLook?.roundId === round.id ? withLook.look : null
      const which = whichFeed(index, rounds.length)
      return {
        roundId: round.id,
        content: taskContent({
          verb: 'feed',
          title: titled('feed', {
            thing: `${food} food`,
            details: [...which, ...(look ? [also('look for eggs')] : [])],
          }),
          steps: [
            ...(look ? eggLookSteps(look) : []),
            ...noFood,
            ...(isSlow ? mealSteps('frozen') : quickMealSteps(food, parameters.minutes)),
            phrase(lookAt[findSpecies(pair.species)?.care.value === 'pouch' ? 'pouch' : 'other']),
          ],
          fields: [...(look ? eggLookFields(look) : []), ...feedFields()],
          because: [
            ...(pair.isResting ? [settingLink(pair.id, 'resting', { label: 'resting' })] : []),
            parameter(pair.isResting ? 'restingFeedsPerDay' : 'feedsPerDay', pair.isResting ? 'and' : null),
            ...(isSlow ? [] : [parameter('minutes', 'and')]),
            ...(look ? eggLookLinks(look).map((link) => ({ ...link, joins: 'and' as const })) : []),
          ],
        }),
        context: { food, looksForEggs: look !== null, laidAt: look && laidAtNoon(snapshot.room, day.date) },
      }
    })
  },
  record: ({ context, values, doneAt, subjectId }) => {
    const planned = ContextSchema.parse(context)
    const food = choiceOf(values, 'food', pairFoods) ?? planned.food
    const fed: FactDraft[] = [{ kind: 'feeding', subjectId, data: { food } }, ...seenFacts(subjectId, values)]
    if (!planned.looksForEggs) return { facts: fed }
    const { facts, ...found } = eggLookOutcome(subjectId, { values, doneAt, laidAt: planned.laidAt })
    return { ...found, facts: [...facts, ...fed] }
  },
})

// Gas under the skin and in the pouch is what seahorses fall ill of in tanks. common practice
const lookAt = {
  pouch:
    'Both eat? Look for bubbles under the skin, a swollen pouch or tail that is not a brood, pale spots, hard breathing.',
  other: 'Both eat? Look for torn fins, spots, hard breathing. Take out what is left.',
}

const quickMealSteps = (food: (typeof pairFoods)[number], minutes: number): Phrase[] => [
  phrase('A little at a time, as much as they clear in {minutes}.', { minutes: { value: minutes, unit: 'minutes' } }),
  ...(food === 'frozen' ? [phrase('Thaw it in tank water and pour the juice away.')] : []),
]

/** The look for eggs that goes with one of the day's feeds. A species without a profile is said by the look itself. */
function lookWithFeed(
  snapshot: RoomSnapshot,
  pair: SnapshotPair,
  day: HusbandryDay,
): { roundId: string; look: EggLook } | null {
  const round = eggLookFeed(snapshot, pair, day)
  if (!round) return null
  try {
    const look = eggLookDue(snapshot, pair, day)
    return look && { roundId: round.id, look }
  } catch (error) {
    if (error instanceof Gap) return null
    throw error
  }
}

function feedFields(): TaskField[] {
  return [
    choiceField({
      name: 'food',
      label: 'Food given',
      choices: pairFoods.map((value) => ({ value, label: value })),
    }),
    choicesField({
      name: 'signs',
      label: 'Anything off?',
      choices: [
        { value: 'not_eating', label: 'not eating' },
        { value: 'fighting', label: 'fighting' },
        { value: 'gasping', label: 'gasping' },
        { value: 'spots_or_wounds', label: 'spots or wounds' },
      ],
    }),
    noteField(),
  ]
}

function seenFacts(subjectId: string, values: Values): FactDraft[] {
  const note = textOf(values, 'note')
  const signs = choicesOf(values, 'signs', pairSigns)
  if (signs.length === 0 && !note) return []
  return [{ kind: 'observation', subjectId, data: { signs, ...(note ? { note } : {}) } }]
}
