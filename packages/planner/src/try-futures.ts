import { fairShares } from './fair-shares.ts'
import { type CourseDay, sumOf } from './follow.ts'
import { grown, leftOf, mayGive, mostOf } from './growth.ts'
import type { FoodQuestion, Future } from './question.ts'

/** What one future made of the plan on one day. */
export type FutureDay = {
  /** What each eater wanted and got, in live animals. */
  wanted: readonly number[]
  got: number[]
  /** The most that each culture could have given, in live animals. */
  could: number[]
}

/**
 * Lives through each future as a caretaker would who has the plan: everybody is fed what he wants on the day from the cultures
 * that the plan names, then from any other that may; where one is short, those that share it share fairly.
 */
export function liveThroughAll(
  question: FoodQuestion,
  { futures, course }: { futures: readonly Future[]; course: readonly CourseDay[] },
): FutureDay[][] {
  // Whom one turns to follows from the plan, whatever comes.
  const orders = feederOrders(question, course)
  return futures.map((future) => liveThrough(question, { future, orders }))
}

type Orders = readonly (readonly (readonly number[])[])[]

function liveThrough(question: FoodQuestion, { future, orders }: { future: Future; orders: Orders }): FutureDay[] {
  const { cultures, days, sievingLoss } = question
  let animals = future.cultures.map((culture) => culture.animals)
  const lived: FutureDay[] = []
  for (let day = 0; day < days; day += 1) {
    const most = cultures.map((culture, c) =>
      mayGive(culture, day) ? mostOf(culture, { animals: animals[c]!, day }) : 0,
    )
    const wanted = future.wanted.map((each) => each[day]! / (1 - sievingLoss))
    const { taken, got } = feed({ most, wanted, orders: orders[day]! })
    const alive = 1 - sievingLoss
    lived.push({
      wanted: future.wanted.map((each) => each[day]!),
      got: got.map((each) => each * alive),
      could: most.map((each) => each * alive),
    })
    animals = cultures.map((culture, c) => {
      const left = leftOf(culture, { animals: animals[c]!, day, taken: taken[c]! })
      return grown(left, future.cultures[c]!.growth[day]!)
    })
  }
  return lived
}

type Meal = { most: readonly number[]; wanted: readonly number[]; orders: readonly (readonly number[])[] }

/** Round after round each eater that is still hungry turns to the next culture on its list. */
function feed({ most, wanted, orders }: Meal): { taken: number[]; got: number[] } {
  const taken = most.map(() => 0)
  const got = wanted.map(() => 0)
  const rounds = Math.max(...orders.map((order) => order.length))
  for (let round = 0; round < rounds; round += 1) {
    if (got.every((animals, eater) => animals >= wanted[eater]!)) break
    for (const [culture, all] of most.entries()) {
      const hungry = orders.flatMap((order, eater) =>
        order[round] === culture && got[eater]! < wanted[eater]! ? [eater] : [],
      )
      const left = all - taken[culture]!
      if (hungry.length === 0 || left <= 0) continue
      const plates = hungry.map((eater) => ({ wanted: wanted[eater]!, has: got[eater]! }))
      const shares = fairShares(plates, left)
      for (const [index, eater] of hungry.entries()) {
        got[eater]! += shares[index]!
        taken[culture]! += shares[index]!
      }
    }
  }
  return { taken, got }
}

/** For each day and eater the cultures in the order in which they are asked: the day's own, the plan's, then the fullest. */
function feederOrders({ cultures, eaters, days }: FoodQuestion, course: readonly CourseDay[]): number[][][] {
  const inAll = cultures.map((_, c) => eaters.map((_, e) => sumOf(course.map(({ taken }) => taken[c]![e]!))))
  const rankOf = (use: string) => (use === 'free' ? 0 : 1)
  return Array.from({ length: days }, (_, day) =>
    eaters.map((eater, e) =>
      cultures
        .flatMap(({ food, use }, c) => (use !== 'never' && food === eater.food ? [c] : []))
        .sort(
          (a, b) =>
            course[day]!.taken[b]![e]! - course[day]!.taken[a]![e]! ||
            inAll[b]![e]! - inAll[a]![e]! ||
            rankOf(cultures[a]!.use) - rankOf(cultures[b]!.use) ||
            cultures[b]!.animals - cultures[a]!.animals,
        ),
    ),
  )
}
