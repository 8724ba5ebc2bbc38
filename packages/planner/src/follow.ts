import { fairShares } from './fair-shares.ts'
import { goneOf, grown, leftOf, mayGive, mostOf } from './growth.ts'
import type { FoodQuestion } from './question.ts'
import type { Taking } from './taking.ts'

export type CourseDay = {
  /** In each culture in the morning. */
  animals: number[]
  /** taken[culture][eater], before sieving. */
  taken: number[][]
  /** Left in each culture in the evening, thinned. */
  left: number[]
  /** Live animals that each eater gets. */
  got: number[]
}

/** Follows a plan day by day through the true growth, within what each culture may give; fair where it falls short. */
export function follow(question: FoodQuestion, taking: Taking): CourseDay[] {
  const { cultures, eaters, days, sievingLoss } = question
  const course: CourseDay[] = []
  const sharers = sharersOf(question, taking)
  let animals = cultures.map((culture) => culture.animals)
  for (let day = 0; day < days; day += 1) {
    const wanted = eaters.map((eater) => eater.wanted[day]! / (1 - sievingLoss))
    const most = cultures.map((culture, index) =>
      mayGive(culture, day) ? mostOf(culture, { animals: animals[index]!, day }) : 0,
    )
    const gone = cultures.map((culture, index) => goneOf(culture, { animals: animals[index]!, day }))
    const planned = cultures.map((_, c) => eaters.map((_, e) => taking.taken(c, e, day)))
    const taken = withoutExcess(planned, wanted).map((row, c) => scaledTo(row, most[c]!))
    // Chords lie a little under the growth that they stand for: what is there beyond the plan may be eaten too.
    for (const [c, row] of taken.entries()) {
      const spare = Math.min(most[c]! - sumOf(row), animals[c]! - gone[c]! - sumOf(row) - taking.left(c, day))
      shareAnew({ taken, culture: c, wanted, sharers: sharers[c]!, more: Math.max(0, spare) })
    }
    const left = cultures.map((culture, c) => leftOf(culture, { animals: animals[c]!, day, taken: sumOf(taken[c]!) }))
    const got = eaters.map((_, e) => sumOf(taken.map((row) => row[e]!)) * (1 - sievingLoss))
    course.push({ animals, taken, left, got })
    animals = left.map((each, c) => grown(each, cultures[c]!.growth[day]!))
  }
  return course
}

export const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/** A solver is exact to a few animals in a million: nobody is given more than he wants. */
function withoutExcess(planned: readonly (readonly number[])[], wanted: readonly number[]): number[][] {
  const part = wanted.map((all, eater) => {
    const given = sumOf(planned.map((row) => row[eater]!))
    return given > all ? all / given : 1
  })
  return planned.map((row) => row.map((animals, eater) => animals * part[eater]!))
}

function scaledTo(row: number[], most: number): number[] {
  const all = sumOf(row)
  return all > most ? row.map((each) => (each * most) / all) : row
}

/** Who has a claim on each culture: whoever it feeds by the plan or feeds now, and whoever nothing feeds by the plan. */
function sharersOf({ cultures, eaters, days }: FoodQuestion, taking: Taking): number[][] {
  const isFed = cultures.map((_, c) =>
    eaters.map((_, e) => Array.from({ length: days }, (_, day) => taking.taken(c, e, day)).some((each) => each > 0)),
  )
  const hasNone = eaters.map((_, e) => isFed.every((row) => !row[e]))
  return cultures.map(({ id, food }, c) =>
    eaters.flatMap((eater, e) =>
      eater.food === food && (isFed[c]![e] || hasNone[e] || eater.fedFrom.includes(id)) ? [e] : [],
    ),
  )
}

type Sharing = {
  taken: number[][]
  culture: number
  wanted: readonly number[]
  sharers: readonly number[]
  more: number
}

/** Divides what a culture gives, and what more it could, among those that it feeds, so that none is much shorter than another. */
function shareAnew({ taken, culture, wanted, sharers, more }: Sharing): void {
  const row = taken[culture]!
  const amount = sumOf(row) + more
  const all = sharers.map((eater) => sumOf(taken.map((each) => each[eater]!)))
  if (amount <= 0 || sharers.every((eater, index) => all[index]! >= wanted[eater]! * (1 - 1e-9))) return
  const plates = sharers.map((eater, index) => ({ wanted: wanted[eater]!, has: all[index]! - row[eater]! }))
  const shares = fairShares(plates, amount)
  for (const [index, eater] of sharers.entries()) row[eater] = shares[index]!
}
