import type { FoodQuestion } from './question.ts'

/** costs[culture][eater], for an animal, of a shortfall on the last day; null where one may not be fed from the other. */
export type FeederCosts = (number | null)[][]

// Small beside any shortfall, and the same again while a culture gives the eater next to nothing: so food comes together
// from few cultures over a few answers, each at the costs that the one before it makes (reweighted l1 norm: Candes, Wakin &
// Boyd 2008, J. Fourier Anal. Appl. 14:877-905).
const mostCosts = 0.02
const usualFeederCosts = 0.5
/** In average days' food: a feeder that gives this much in all costs half of the most. */
const halfAt = 0.5

/** At first every culture that may feed at all costs the same, and one that feeds the eater now half of it. */
export const firstCosts = ({ cultures, eaters }: FoodQuestion): FeederCosts =>
  cultures.map(({ id, use, food }) =>
    eaters.map((eater) => {
      if (use === 'never' || eater.food !== food) return null
      return 0.1 * mostCosts * (eater.fedFrom.includes(id) ? usualFeederCosts : 1)
    }),
  )

/** What a feeder costs after an answer in which it gave so many average days' food in all. */
export function nextCosts(
  { cultures, eaters }: FoodQuestion,
  { costs, given }: { costs: FeederCosts; given: (culture: number, eater: number) => number },
): FeederCosts {
  return cultures.map(({ id }, culture) =>
    eaters.map(({ fedFrom }, eater) => {
      if (costs[culture]![eater] === null) return null
      const few = mostCosts / (1 + given(culture, eater) / halfAt)
      return few * (fedFrom.includes(id) ? usualFeederCosts : 1)
    }),
  )
}
