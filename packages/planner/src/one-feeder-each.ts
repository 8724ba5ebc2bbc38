import { grown, leftOf, mayGive, mostOf } from './growth.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

// Shares between cultures tried before the search gives up and the food is shared out: counted, not timed. Six cultures and
// five eaters have 7,776.
const mostTries = 20_000

type Search = {
  question: FoodQuestion
  /** Eaters with anything to eat, by whom it is hardest to find a culture for: the one that eats most first. */
  eaters: number[]
  tries: number
  best: { feeders: Map<number, number>; strangers: number; strain: number } | null
}

/**
 * One culture for each eater, from which it gets all it wants: with as few new feeders as can be, and of those the one that
 * strains the hardest-used culture least. Null where no such choice is found. Only cultures free to give are asked.
 */
export function oneFeederEach(question: FoodQuestion): Map<number, number> | null {
  const total = (eater: number) => question.eaters[eater]!.wanted.reduce((sum, animals) => sum + animals, 0)
  const hungry = question.eaters.map((_, index) => index).filter((eater) => total(eater) > 0)
  const search: Search = { question, eaters: hungry.sort((a, b) => total(b) - total(a)), tries: 0, best: null }
  const asked = question.cultures.map(() => new Array<number>(question.days).fill(0))
  choose(search, { chosen: new Map(), strangers: 0, strains: question.cultures.map(() => 0), asked })
  return search.best?.feeders ?? null
}

type Choice = {
  chosen: Map<number, number>
  strangers: number
  /** The hardest day of each culture so far: asked over the most it may give. */
  strains: number[]
  /** Animals that each culture is asked for, day by day. */
  asked: number[][]
}

function choose(search: Search, choice: Choice): void {
  const { question, eaters, best } = search
  const strain = Math.max(...choice.strains)
  if (best && (choice.strangers > best.strangers || (choice.strangers === best.strangers && strain >= best.strain)))
    return
  const eater = eaters[choice.chosen.size]
  if (eater === undefined) {
    search.best = { feeders: new Map(choice.chosen), strangers: choice.strangers, strain }
    return
  }
  for (const [culture, each] of question.cultures.entries()) {
    if (each.use !== 'free' || each.food !== question.eaters[eater]!.food) continue
    search.tries += 1
    if (search.tries > mostTries) return
    const asked = choice.asked[culture]!.map(
      (animals, day) => animals + question.eaters[eater]!.wanted[day]! / (1 - question.sievingLoss),
    )
    const strained = strainOf(each, asked)
    if (strained === null) continue
    choose(search, {
      chosen: new Map([...choice.chosen, [eater, culture]]),
      strangers: choice.strangers + (question.eaters[eater]!.fedFrom.includes(each.id) ? 0 : 1),
      strains: choice.strains.with(culture, strained),
      asked: choice.asked.with(culture, asked),
    })
  }
}

/** The hardest day of a culture that gives what is asked, as a share of the most it may give; null where it cannot. */
function strainOf(culture: PlanCulture, asked: readonly number[]): number | null {
  let animals = culture.animals
  let strain = 0
  for (const [day, taken] of asked.entries()) {
    const most = mayGive(culture, day) ? mostOf(culture, { animals, day }) : 0
    if (taken > most) return null
    if (taken > 0) strain = Math.max(strain, taken / most)
    animals = grown(leftOf(culture, { animals, day, taken }), culture.growth[day]!)
  }
  return strain
}
