import { type CourseDay, sumOf } from './follow.ts'
import type { FoodQuestion } from './question.ts'
import { type FutureDay, liveThroughAll } from './try-futures.ts'

/** With less than this share of what it wants an eater falls short: the error of a good count (about 100 animals). */
export const SHORT_UNDER = 0.9
/** A day is one of worry from this chance of falling short on. common practice */
export const WORRY_FROM = 0.2

export type Band = { p10: number; p50: number; p90: number }

export type TriedDay = {
  /** Chance that at least one eater gets less than nine tenths of what it wants. */
  chance: number
  /** The same for each eater, in the question's order. */
  chances: number[]
  /** Live animals missing on this day, over all futures and in the worst tenth of them. */
  short: { mean: number; p90: number }
}

/** What all eaters of a food want on each day, and what all cultures of it could give, in live animals. */
export type FoodBand = { food: string; wanted: Band[]; couldGive: Band[] }

export type Tried = {
  futures: number
  days: TriedDay[]
  bands: FoodBand[]
  /** The first day on which the chance of falling short is a fifth or more; null without one. */
  firstDayOfWorry: number | null
}

/** The plan tried against every future of the question; null where it has none. */
export function triedIn(question: FoodQuestion, course: readonly CourseDay[]): Tried | null {
  const { futures = [], days } = question
  if (futures.length === 0) return null
  const lived = liveThroughAll(question, { futures, course })
  const triedDays = Array.from({ length: days }, (_, day) => dayOf(lived.map((each) => each[day]!)))
  const worry = triedDays.findIndex(({ chance }) => chance >= WORRY_FROM)
  return {
    futures: futures.length,
    days: triedDays,
    bands: foodsOf(question).map((food) => bandOf(question, lived, food)),
    firstDayOfWorry: worry < 0 ? null : worry,
  }
}

const isShort = (wanted: number, got: number): boolean => got < SHORT_UNDER * wanted

function dayOf(lived: readonly FutureDay[]): TriedDay {
  const shareOf = (count: number) => count / lived.length
  const missing = lived.map(({ wanted, got }) => sumOf(wanted.map((all, e) => Math.max(0, all - got[e]!))))
  const eaters = lived[0]!.wanted
  return {
    chance: shareOf(lived.filter(({ wanted, got }) => wanted.some((all, e) => isShort(all, got[e]!))).length),
    chances: eaters.map((_, e) => shareOf(lived.filter(({ wanted, got }) => isShort(wanted[e]!, got[e]!)).length)),
    short: { mean: sumOf(missing) / missing.length, p90: bandFrom(missing).p90 },
  }
}

const foodsOf = ({ cultures, eaters }: FoodQuestion): string[] => [
  ...new Set([...eaters, ...cultures].map(({ food }) => food)),
]

function bandOf({ cultures, eaters, days }: FoodQuestion, lived: readonly FutureDay[][], food: string): FoodBand {
  const ofFood = (values: readonly number[], things: readonly { food: string }[]) =>
    sumOf(values.filter((_, index) => things[index]!.food === food))
  const eachDay = (amountOf: (day: FutureDay) => number) =>
    Array.from({ length: days }, (_, day) => bandFrom(lived.map((each) => amountOf(each[day]!))))
  return {
    food,
    wanted: eachDay(({ wanted }) => ofFood(wanted, eaters)),
    couldGive: eachDay(({ could }) => ofFood(could, cultures)),
  }
}

/** Quantiles straight between ranks (type 7 of Hyndman & Fan 1996, Am. Stat. 50:361-365). */
function bandFrom(values: readonly number[]): Band {
  const sorted = Float64Array.from(values).sort()
  const at = (share: number) => {
    const rank = (sorted.length - 1) * share
    const low = sorted[Math.floor(rank)]!
    return low + (sorted[Math.ceil(rank)]! - low) * (rank - Math.floor(rank))
  }
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) }
}
