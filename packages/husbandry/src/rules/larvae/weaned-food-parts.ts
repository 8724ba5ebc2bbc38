import type { Because, Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { Weaning } from '../../plans/wean-plan.ts'
import { computedLink, profileLink } from '../../rule/why.ts'
import type { WeanedFood } from '../../species/schema.ts'
import { takenWords } from '../../state/weaned.ts'
import { choiceField } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { days, grams, leastWeighedG, measurableG } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { choiceOf, type Values } from '../../task/values.ts'
import { mealSteps, thawed } from '../parts/meal-steps.ts'

type Offer = Pick<Weaning, 'food' | 'feedG'>

/** How what they are weaned to is offered to larvae, alone or as the first part of an Artemia feed. */
export function weanedFoodSteps({ food, feedG }: Offer): Phrase[] {
  return [
    ...(food === 'frozen' ? [thawed()] : []),
    feedG === null ? phrase(offered[food].unweighed) : phrase(offered[food].weighed, { feed: grams(shownG(feedG)) }),
    ...howLittle(feedG),
    phrase('Watch whether they take it or spit it out. Siphon what sinks within the hour.'),
  ]
}

const offered: Record<WeanedFood, { weighed: string; unweighed: string }> = {
  dry: {
    weighed: 'Up to {feed} of fine food, dusted on before the live food, while they are hungry.',
    unweighed: 'A dusting of fine food before the live food, while they are hungry: what is gone in two minutes.',
  },
  frozen: {
    weighed: 'Up to {feed} of it, drained, let drift past them before the live food, while they are hungry.',
    unweighed:
      'A little of it let drift past them before the live food, while they are hungry: what is gone in ten minutes.',
  },
}

/** How those are fed that get nothing else. */
export function onlyWeanedFoodSteps({ food, feedG }: Offer): Phrase[] {
  return [
    ...mealSteps(food),
    ...howLittle(feedG),
    phrase('Any that hang back with empty bellies: say that only some take it, and they get Artemia again.'),
  ]
}

function howLittle(feedG: number | null): Phrase[] {
  if (feedG === null || feedG >= leastWeighedG) return []
  const ten = grams(Number((10 * shownG(feedG)).toFixed(1)))
  return [
    phrase('Too little for a scale: weigh {ten} once, which is ten such feeds, to see how little one is.', { ten }),
  ]
}

/** As a scale shows it; under its first mark to a hundredth of a gram, and never nothing. */
const shownG = (feedG: number): number =>
  feedG >= leastWeighedG ? measurableG(feedG) : Math.max(0.01, Number(feedG.toFixed(2)))

const taken: Record<WeanedFood, string> = { dry: 'Dry food taken?', frozen: 'Frozen food taken?' }

export const weanedFoodField = (food: WeanedFood): TaskField =>
  choiceField({
    name: 'taken',
    label: taken[food],
    choices: [
      { value: 'none', label: 'hardly any' },
      { value: 'some', label: 'by some' },
      { value: 'all', label: 'by nearly all' },
    ],
  })

export function weanedFoodLinks({ diet, food, feedG }: Weaning, joins: Because['joins']): Because[] {
  const { feeding, growth, tradeName } = diet.species
  const { weaningFirstDay, weaningLastDay, weanedTo } = feeding
  return [
    profileLink(tradeName, weanedTo.source.citation, { label: 'weaned to', text: foodName(food), joins }),
    profileLink(tradeName, weaningFirstDay.source.citation, {
      label: `old at the first ${foodName(food)}`,
      quantity: days(weaningFirstDay.value),
      joins: 'and',
    }),
    profileLink(tradeName, weaningLastDay.source.citation, {
      label: `old when ${foodName(food)} is all`,
      quantity: days(weaningLastDay.value),
      joins: 'and',
    }),
    ...(feedG === null
      ? []
      : [
          computedLink(
            'larvae by the book, weight by length, a small juvenile’s share, by feeds',
            growth.weight.source.citation,
            { label: 'a feed at the most', quantity: grams(shownG(feedG)), joins: 'and' as const },
          ),
        ]),
  ]
}

export function weanedFoodFact(
  subjectId: string,
  { food, values, amountG }: { food: WeanedFood; values: Values; amountG?: number | undefined },
): FactDraft {
  const answer = choiceOf(values, 'taken', ['none', 'some', 'all'] as const)
  const data = { ...(amountG === undefined ? {} : { amountG }), ...(answer ? { note: takenWords[answer] } : {}) }
  return { kind: 'feeding', subjectId, data: { food, ...data } }
}
