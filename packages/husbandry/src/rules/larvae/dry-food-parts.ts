import type { Because, Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { Weaning } from '../../plans/wean-plan.ts'
import { computedLink, profileLink } from '../../rule/why.ts'
import { weightSource } from '../../species/juvenile-growth.ts'
import { dryFoodWords } from '../../state/dry-food.ts'
import { choiceField } from '../../task/fields.ts'
import { days, grams, leastWeighedG } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { choiceOf, type Values } from '../../task/values.ts'
import { frozenInstead } from '../parts/frozen-food.ts'

/** How dry food is offered to larvae, alone or as the first part of an Artemia feed. */
export function dryFoodSteps({ diet, feedG }: Pick<Weaning, 'diet' | 'feedG'>): Phrase[] {
  return [
    ...frozenInstead([diet.species.id]),
    feedG === null
      ? phrase('A dusting of fine food before the live food, while they are hungry: what is gone in two minutes.')
      : phrase('Up to {feed} of fine food, dusted on before the live food, while they are hungry.', {
          feed: grams(hundredths(feedG)),
        }),
    ...howLittle(feedG),
    phrase('Watch whether they take it or spit it out. Siphon what sinks within the hour.'),
  ]
}

/** How those are fed that get nothing else. */
export function onlyDryFoodSteps({ diet, feedG }: Pick<Weaning, 'diet' | 'feedG'>): Phrase[] {
  return [
    ...frozenInstead([diet.species.id]),
    ...howLittle(feedG),
    phrase('A little at a time, over the whole surface, so that the small ones get theirs.'),
    phrase('All gone in two minutes, or it was too much: siphon the rest.'),
    phrase('Any that hang back with empty bellies: say that only some take it, and they get Artemia again.'),
  ]
}

function howLittle(feedG: number | null): Phrase[] {
  if (feedG === null || feedG >= leastWeighedG) return []
  const ten = grams(Number((10 * hundredths(feedG)).toFixed(1)))
  return [
    phrase('Too little for a scale: weigh {ten} once, which is ten such feeds, to see how little one is.', { ten }),
  ]
}

/** To a hundredth of a gram, and never nothing. */
const hundredths = (feedG: number): number => Math.max(0.01, Number(feedG.toFixed(2)))

export const dryFoodField: TaskField = choiceField({
  name: 'taken',
  label: 'Dry food taken?',
  choices: [
    { value: 'none', label: 'hardly any' },
    { value: 'some', label: 'by some' },
    { value: 'all', label: 'by nearly all' },
  ],
})

export function dryFoodLinks({ diet, feedG }: Weaning, joins: Because['joins']): Because[] {
  const { weaningFirstDay, weaningLastDay } = diet.species.feeding
  return [
    profileLink(diet.species.tradeName, weaningFirstDay.source.citation, {
      label: 'old at the first dry food',
      quantity: days(weaningFirstDay.value),
      joins,
    }),
    profileLink(diet.species.tradeName, weaningLastDay.source.citation, {
      label: 'old when dry food is all',
      quantity: days(weaningLastDay.value),
      joins: 'and',
    }),
    ...(feedG === null
      ? []
      : [
          computedLink('larvae by the book, weight by length, a small juvenile’s share, by feeds', weightSource, {
            label: 'a feed at the most',
            quantity: grams(hundredths(feedG)),
            joins: 'and' as const,
          }),
        ]),
  ]
}

export function dryFoodFact(subjectId: string, values: Values, amountG?: number): FactDraft {
  const taken = choiceOf(values, 'taken', ['none', 'some', 'all'] as const)
  const data = { ...(amountG === undefined ? {} : { amountG }), ...(taken ? { note: dryFoodWords[taken] } : {}) }
  return { kind: 'feeding', subjectId, data: { food: 'dry', ...data } }
}
