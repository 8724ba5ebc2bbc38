import type { Because, Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { Weaning } from '../../plans/wean-plan.ts'
import { profileLink } from '../../rule/why.ts'
import { dryFoodWords } from '../../state/dry-food.ts'
import { choiceField } from '../../task/fields.ts'
import { days } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { choiceOf, type Values } from '../../task/values.ts'

/** How dry food is offered to larvae, alone or as the first part of an Artemia feed. */
export function dryFoodSteps(): Phrase[] {
  return [
    phrase('Fine food, dusted on before the live food, while they are hungry.'),
    phrase('Watch whether they take it or spit it out. Siphon what sinks within the hour.'),
  ]
}

export const dryFoodField: TaskField = choiceField({
  name: 'taken',
  label: 'Dry food taken?',
  choices: [
    { value: 'none', label: 'hardly any' },
    { value: 'some', label: 'by some' },
    { value: 'all', label: 'by nearly all' },
  ],
})

export function dryFoodLinks({ diet }: Weaning, joins: Because['joins']): Because[] {
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
  ]
}

export function dryFoodFact(subjectId: string, values: Values): FactDraft {
  const taken = choiceOf(values, 'taken', ['none', 'some', 'all'] as const)
  return { kind: 'feeding', subjectId, data: { food: 'dry', ...(taken ? { note: dryFoodWords[taken] } : {}) } }
}
