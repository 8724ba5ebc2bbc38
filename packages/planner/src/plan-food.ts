import { assertQuestion } from './check-question.ts'
import { type CourseDay, follow, sumOf } from './follow.ts'
import { oneFeederEach } from './one-feeder-each.ts'
import type { FoodQuestion } from './question.ts'
import { shareOut } from './share-out.ts'
import type { Taking } from './taking.ts'
import { type Tried, triedIn } from './tried.ts'

/** So many litres of a culture, sieved, to an eater: `animals` of them alive. */
export type Give = { cultureId: string; eaterId: string; litres: number; animals: number }

export type PlannedDay = {
  gives: Give[]
  /** Each culture in the morning, what is eaten of it, and what is thinned besides. */
  cultures: { id: string; animals: number; fedL: number; spareL: number }[]
  /** What each eater wants and gets, in live animals. */
  eaters: { id: string; wanted: number; got: number }[]
}

export type FoodPlan = {
  days: PlannedDay[]
  /** Live animals missing over all days, as expected. */
  shortfall: number
  /** Cultures that give only when short, and are asked for something. */
  lastResorts: string[]
  tried: Tried | null
}

/**
 * Litres from each culture to each eater, day by day. No culture gives more than its share or falls under its floor,
 * whoever eats from it; each eater has one culture where one can feed it. Where food is short, it is short as little and
 * as late as it can be, and those that share a culture share it fairly. Then the plan is lived through every future given.
 * The same question has the same answer, on any machine.
 * @throws ArgumentError naming what in the question cannot be, its value and what is allowed.
 */
export async function planFood(question: FoodQuestion): Promise<FoodPlan> {
  assertQuestion(question)
  const feeders = oneFeederEach(question)
  const course = follow(question, feeders ? takingFrom(question, feeders) : await shareOut(question))
  const days = course.map((each, day) => plannedDay(question, each, day))
  const asked = question.cultures.filter(
    ({ use }, c) => use === 'when-short' && course.some(({ taken }) => sumOf(taken[c]!) > 0),
  )
  return {
    days,
    shortfall: sumOf(days.flatMap(({ eaters }) => eaters.map(({ wanted, got }) => Math.max(0, wanted - got)))),
    lastResorts: asked.map(({ id }) => id),
    tried: triedIn(question, course),
  }
}

/** Everybody eats what he wants of his one culture. */
function takingFrom({ eaters, sievingLoss }: FoodQuestion, feeders: ReadonlyMap<number, number>): Taking {
  return {
    taken: (culture, eater, day) =>
      feeders.get(eater) === culture ? eaters[eater]!.wanted[day]! / (1 - sievingLoss) : 0,
    left: () => 0,
  }
}

function plannedDay({ cultures, eaters, sievingLoss }: FoodQuestion, course: CourseDay, day: number): PlannedDay {
  const { animals, taken, left, got } = course
  const litresOf = (culture: number, amount: number) =>
    animals[culture]! > 0 ? (amount / animals[culture]!) * cultures[culture]!.volumeL : 0
  const gives = cultures.flatMap((culture, c) =>
    eaters.flatMap((eater, e): Give[] => {
      const amount = taken[c]![e]!
      if (amount <= 0) return []
      const alive = amount * (1 - sievingLoss)
      return [{ cultureId: culture.id, eaterId: eater.id, litres: litresOf(c, amount), animals: alive }]
    }),
  )
  return {
    gives,
    cultures: cultures.map(({ id }, c) => {
      const fed = sumOf(taken[c]!)
      const spare = Math.max(0, animals[c]! - fed - left[c]!)
      return { id, animals: animals[c]!, fedL: litresOf(c, fed), spareL: litresOf(c, spare) }
    }),
    eaters: eaters.map(({ id, wanted }, e) => ({ id, wanted: wanted[day]!, got: got[e]! })),
  }
}
