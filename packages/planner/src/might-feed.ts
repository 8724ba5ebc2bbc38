import { grown, leftOf, mayGive, mostOf } from './growth.ts'
import { feedersOf, type Links, type Part } from './links.ts'
import type { FoodQuestion } from './question.ts'
import { nothing } from './solve.ts'

/** False where a culture cannot even feed those that have no other, or an eater's cultures together not even him beside those. */
export function mightFeed(question: FoodQuestion, { cultures, eaters }: Part, links: Links): boolean {
  const { days, sievingLoss } = question
  const spare = new Map<number, number[]>()
  for (const culture of cultures) {
    const alone = eaters.filter((eater) => links[culture]![eater] && feedersOf(links, eater).length === 1)
    const left = spareBeside(question, culture, alone)
    if (!left) return false
    spare.set(culture, left)
  }
  return eaters.every((eater) => {
    const feeders = feedersOf(links, eater)
    if (feeders.length < 2) return true
    return Array.from({ length: days }, (_, day) => day).every((day) => {
      const all = feeders.reduce((sum, culture) => sum + spare.get(culture)![day]!, 0)
      return question.eaters[eater]!.wanted[day]! / (1 - sievingLoss) <= all * (1 + nothing)
    })
  })
}

/** The most that is left to take of a culture on each day when nobody else has taken any; null where these few take too much. */
function spareBeside(question: FoodQuestion, culture: number, alone: readonly number[]): number[] | null {
  const about = question.cultures[culture]!
  const spare: number[] = []
  let { animals } = about
  for (const [day, growth] of about.growth.entries()) {
    const taken =
      alone.reduce((sum, eater) => sum + question.eaters[eater]!.wanted[day]!, 0) / (1 - question.sievingLoss)
    const most = mayGive(about, day) ? mostOf(about, { animals, day }) : 0
    if (taken > most * (1 + nothing)) return null
    spare.push(most - taken)
    animals = grown(leftOf(about, { animals, day, taken }), growth)
  }
  return spare
}
