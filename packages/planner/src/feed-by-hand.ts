import { fairShares } from './fair-shares.ts'
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
  const inOrder = [...part.eaters].sort((a, b) => feedersOf(links, a).length - feedersOf(links, b).length)
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
      // Cultures are strained alike as plates are filled alike: what each may give is what is asked of it at most.
      const shares = fairShares(
        feeders.map((culture) => ({ wanted: most[culture]!, has: gone[culture]! })),
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
