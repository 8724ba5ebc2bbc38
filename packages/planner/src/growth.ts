import type { DayGrowth, PlanCulture } from './question.ts'

/** Animals on the next morning of so many left in the evening (a logistic day in closed form, Beverton & Holt 1957). */
export const grown = (left: number, { gain, crowding }: DayGrowth): number => (gain * left) / (1 + crowding * left)

type Stock = { animals: number; day: number }

/** What of a culture's morning has gone elsewhere on a day. */
export const goneOf = ({ goneShare }: PlanCulture, { animals, day }: Stock): number =>
  day === 0 ? goneShare * animals : 0

/** The most that may go of it in a day, whoever eats it: never over its share, never under its floor. */
const mayGo = ({ mostShare, floorAnimals }: PlanCulture, animals: number): number =>
  Math.max(0, Math.min(mostShare * animals, animals - floorAnimals))

/** The most that a culture may still give to eaters on a day. */
export const mostOf = (culture: PlanCulture, stock: Stock): number =>
  Math.max(0, mayGo(culture, stock.animals) - goneOf(culture, stock))

/** What is left of a culture once the day's food is taken and the rest is thinned as far as one may. */
export function leftOf(culture: PlanCulture, stock: Stock & { taken: number }): number {
  const { thinnedToAnimals } = culture
  const { animals, taken } = stock
  const left = animals - goneOf(culture, stock) - taken
  if (thinnedToAnimals === null || left <= thinnedToAnimals) return left
  return Math.min(left, Math.max(thinnedToAnimals, animals - mayGo(culture, animals)))
}

/** Whether a culture may feed anybody on a day. */
export const mayGive = ({ use, firstDay }: PlanCulture, day: number): boolean => use !== 'never' && day >= firstDay

// Where the chords of a day's growth meet, in crowding * animals: a culture at its capacity stands at gain - 1. Chosen so
// that no chord lies more than one in a hundred under the curve from 0.03 to 2.5, where cultures are kept.
const meets = [0, 0.015, 0.03, 0.06, 0.1, 0.15, 0.2, 0.27, 0.36, 0.48, 0.65, 0.9, 1.25, 1.75, 2.5]

export type Line = { slope: number; offset: number }

/**
 * Straight lines whose least value stands for a day's growth over a range of animals left. They are chords, so that a plan
 * that holds them holds the true growth; over no more than that range they are the same whatever the range is.
 */
export function chords({ gain, crowding }: DayGrowth, { from, to }: { from: number; to: number }): Line[] {
  if (crowding === 0 || gain === 0) return [{ slope: gain, offset: 0 }]
  const lines: Line[] = []
  for (const [index, start] of meets.slice(0, -1).entries()) {
    const end = meets[index + 1]!
    const isLast = index === meets.length - 2
    if (start / crowding > to || (end / crowding < from && !isLast)) continue
    const low = grown(start / crowding, { gain, crowding })
    const slope = ((grown(end / crowding, { gain, crowding }) - low) * crowding) / (end - start)
    lines.push({ slope, offset: low - (slope * start) / crowding })
  }
  return lines
}

/** What the chords make of so many left. */
export const grownByChords = (left: number, growth: DayGrowth): number =>
  Math.min(...chords(growth, { from: left, to: left }).map(({ slope, offset }) => slope * left + offset))
