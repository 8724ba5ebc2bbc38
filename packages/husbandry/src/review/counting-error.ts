import type { CountData } from '@fryward/shared'
import { type Interval, poissonInterval } from '@fryward/survival'
import { headsOf } from '../facts/heads.ts'

/**
 * Up to so many are counted one by one; more eggs and larvae are counted in a tenth (of the surface, of the patch or of a
 * photograph) and that ten times. The tasks ask for it so; that whoever wrote a number did it so is an assumption.
 */
const ONE_BY_ONE = 100
const TENTH = 10
/** Two standard errors either side, near enough: the normal deviate of 95 %. */
const DEVIATE_95 = 1.959964

/** How many there were, and how far the count itself may be off. */
export type Counted = { number: number; standardError: number; interval: Interval }

type Animals = CountData['of']

/**
 * A number of animals with the error of its counting: of a tenth the Poisson error (exact interval: Garwood 1936,
 * Biometrika 28:437-442), of repeats what they differ by, of juveniles none, for they are passed from cup to cup.
 */
export function countedOf(of: Animals, animals: readonly number[]): Counted {
  const mean = headsOf({ animals: [...animals] })
  const number = Math.round(mean)
  if (animals.length > 1) return repeated(number, animals)
  if (of === 'juveniles' || number <= ONE_BY_ONE) return exactly(number)
  const { lower, upper } = poissonInterval({ count: Math.round(number / TENTH) })
  return {
    number,
    standardError: Math.sqrt(number * TENTH),
    interval: { lower: Math.round(lower * TENTH), upper: Math.round(upper * TENTH) },
  }
}

export const exactly = (number: number): Counted => ({
  number,
  standardError: 0,
  interval: { lower: number, upper: number },
})

function repeated(number: number, animals: readonly number[]): Counted {
  const mean = headsOf({ animals: [...animals] })
  const squares = animals.reduce((sum, each) => sum + (each - mean) ** 2, 0)
  const standardError = Math.sqrt(squares / (animals.length - 1) / animals.length)
  const half = DEVIATE_95 * standardError
  return {
    number,
    standardError,
    interval: { lower: Math.max(0, Math.round(number - half)), upper: Math.round(number + half) },
  }
}

/** Numbers counted apart, such as of two batches, as one. */
export function together(counts: readonly Counted[]): Counted {
  const [only] = counts
  if (counts.length === 1 && only) return only
  const number = counts.reduce((sum, each) => sum + each.number, 0)
  const standardError = Math.hypot(...counts.map((each) => each.standardError))
  const half = DEVIATE_95 * standardError
  return {
    number,
    standardError,
    interval: { lower: Math.max(0, Math.round(number - half)), upper: Math.round(number + half) },
  }
}

/** What came and went since a count is known one by one: the count's error stays in the number until somebody counts again. */
export function shifted({ number: counted, standardError, interval }: Counted, number: number): Counted {
  const lower = Math.min(number, Math.max(0, interval.lower + number - counted))
  return { number, standardError, interval: { lower, upper: Math.max(number, interval.upper + number - counted) } }
}
