import type { Phrase } from '@fryward/shared'
import type { WeanedFood } from '../../species/schema.ts'
import { phrase } from '../../task/phrases.ts'

/** How frozen food is made ready, and weighed. common practice */
export const thawed = (): Phrase =>
  phrase('Thaw it in tank water, pour the juice away, rinse and drain it; cut it to the size of their mouths.')

/** How young are fed that live on it. common practice */
export function mealSteps(food: WeanedFood): Phrase[] {
  return food === 'frozen'
    ? [
        thawed(),
        phrase('A little at a time, let drift past all of them: they pick it up one by one.'),
        phrase('What still lies there after half an hour was too much: siphon it.'),
      ]
    : [
        phrase('A little at a time, over the whole surface, so that the small ones get theirs.'),
        phrase('All gone in two minutes, or it was too much: siphon the rest.'),
      ]
}
