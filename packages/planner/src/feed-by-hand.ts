import { grown, leftOf, mayGive, mostOf } from './growth.ts'
import { feedersOf, type Links, type Part } from './links.ts'
import type { FoodQuestion } from './question.ts'

export type FedByHand = {
  /** What was wanted and not there, before sieving; once anything is missing no measure of what must be. */
  missed: number
  /** taken[day][culture][eater], before sieving. */
  taken: number[][][]
}

/**
 * A part of the room fed without looking ahead: day by day whoever has one culture eats of it what he wants, and then whoever
 * has several takes of them so that all are strained alike. Where nothing is missing it is a plan; else there may be one.
 */
export function fedByHand(question: FoodQuestion, part: Part, links: Links): FedByHand {
  const { cultures, days, sievingLoss } = question
  const inOrder = [...part.eaters].sort((a, b) => feedersOf(links, a).length - feedersOf(links, b).length || a - b)
  const fed: FedByHand = { missed: 0, taken: [] }
  let animals = cultures.map((culture) => culture.animals)
  for (let day = 0; day < days; day += 1) {
    const most = cultures.map((culture, c) =>
      mayGive(culture, day) ? mostOf(culture, { animals: animals[c]!, day }) : 0,
    )
    const gone = cultures.map(() => 0)
    const taken = cultures.map(() => question.eaters.map(() => 0))
    for (const eater of inOrder) {
      const wanted = question.eaters[eater]!.wanted[day]! / (1 - sievingLoss)
      const feeders = feedersOf(links, eater)
      const shares = strainedAlike(
        feeders.map((culture) => ({ most: most[culture]!, gone: gone[culture]! })),
        wanted,
      )
      for (const [index, culture] of feeders.entries()) {
        taken[culture]![eater] = shares[index]!
        gone[culture]! += shares[index]!
      }
      fed.missed += wanted - shares.reduce((sum, share) => sum + share, 0)
    }
    fed.taken.push(taken)
    animals = cultures.map((culture, c) =>
      grown(leftOf(culture, { animals: animals[c]!, day, taken: gone[c]! }), culture.growth[day]!),
    )
  }
  return fed
}

type Stock = { most: number; gone: number }

/** Shares of an amount, so that of what each may give the same part is gone then, as far as that can be. */
export function strainedAlike(stocks: readonly Stock[], amount: number): number[] {
  const spare = stocks.map(({ most, gone }) => Math.max(0, most - gone))
  if (spare.reduce((sum, each) => sum + each, 0) <= amount) return spare
  // Least strained first: the level rises to each of the next, until the amount is given.
  const order = stocks.map((_, index) => index).sort((a, b) => strainOf(stocks[a]!) - strainOf(stocks[b]!))
  let most = 0
  let gone = 0
  let level = 0
  for (const [rank, index] of order.entries()) {
    most += stocks[index]!.most
    gone += stocks[index]!.gone
    level = (amount + gone) / most
    if (rank + 1 === order.length || level <= strainOf(stocks[order[rank + 1]!]!)) break
  }
  return stocks.map((stock) => Math.max(0, level * stock.most - stock.gone))
}

const strainOf = ({ most, gone }: Stock): number => (most > 0 ? gone / most : Number.POSITIVE_INFINITY)
