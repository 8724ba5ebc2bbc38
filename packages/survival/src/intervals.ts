import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { assertLevel, assertWhole } from './argument-error.ts'
import { chiSquareQuantile } from './chi-square-quantile.ts'

export type Interval = { lower: number; upper: number }
export type Proportion = { successes: number; trials: number }

/** The two-sided 95 % of nearly every published table; common practice. */
export const DEFAULT_LEVEL = 0.95

/** Standard normal deviate that leaves (1 - level) / 2 in each tail. */
export function normalDeviate(level: number): number {
  assertLevel(level)
  return normalQuantile((1 + level) / 2, 0, 1)
}

/**
 * Exact interval for the mean of a Poisson count, in animals (the same unit as the count).
 * Garwood 1936, Biometrika 28:437-442, through the chi-square quantile. A count of 0 has a lower end of 0.
 * @throws ArgumentError when count is not a whole number from 0, or level is not inside (0, 1).
 */
export function poissonInterval({ count, level = DEFAULT_LEVEL }: { count: number; level?: number }): Interval {
  assertWhole('count', count)
  assertLevel(level)
  const tail = (1 - level) / 2
  return {
    lower: count === 0 ? 0 : chiSquareQuantile(tail, 2 * count) / 2,
    upper: chiSquareQuantile(1 - tail, 2 * count + 2) / 2,
  }
}

function assertProportion({ successes, trials }: Proportion, prefix = ''): void {
  assertWhole(`${prefix}trials`, trials, { min: 1 })
  assertWhole(`${prefix}successes`, successes, { min: 0, max: trials })
}

/**
 * Score interval of a share. `trials` may be an effective number and so need not be whole.
 * Wilson 1927, J. Am. Stat. Assoc. 22:209-212; method 3 of Newcombe 1998, Stat. Med. 17:857-872.
 */
export function scoreInterval({ share, trials, level }: { share: number; trials: number; level: number }): Interval {
  const z = normalDeviate(level)
  const centre = (share + (z * z) / (2 * trials)) / (1 + (z * z) / trials)
  const half = (z / (1 + (z * z) / trials)) * Math.sqrt((share * (1 - share)) / trials + (z / (2 * trials)) ** 2)
  // At 0 and 1 the formula touches the end exactly; rounding must not push it past.
  return {
    lower: share === 0 ? 0 : Math.max(0, centre - half),
    upper: share === 1 ? 1 : Math.min(1, centre + half),
  }
}

/**
 * Wilson score interval for the share successes / trials, both ends within [0, 1].
 * Wilson 1927; method 3 of Newcombe 1998, Stat. Med. 17:857-872 (no continuity correction).
 * @throws ArgumentError when trials is under 1, successes is outside 0..trials, or level is not inside (0, 1).
 */
export function wilsonInterval({
  successes,
  trials,
  level = DEFAULT_LEVEL,
}: Proportion & { level?: number }): Interval {
  assertProportion({ successes, trials })
  return scoreInterval({ share: successes / trials, trials, level })
}

/**
 * Exact (never too narrow) interval for the share successes / trials, both ends within [0, 1].
 * Clopper & Pearson 1934, Biometrika 26:404-413, through the beta quantile.
 * @throws ArgumentError as for wilsonInterval.
 */
export function clopperPearsonInterval({
  successes,
  trials,
  level = DEFAULT_LEVEL,
}: Proportion & { level?: number }): Interval {
  assertProportion({ successes, trials })
  assertLevel(level)
  const tail = (1 - level) / 2
  const failures = trials - successes
  return {
    lower: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    upper: failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
  }
}

/**
 * Interval for the difference of two independent shares, b - a, both ends within [-1, 1].
 * Method 10 of Newcombe 1998, Stat. Med. 17:873-890: squares and adds the two Wilson half-widths.
 * @throws ArgumentError as for wilsonInterval, naming a.trials, b.successes and so on.
 */
export function proportionDifferenceInterval({
  a,
  b,
  level = DEFAULT_LEVEL,
}: {
  a: Proportion
  b: Proportion
  level?: number
}): Interval {
  assertProportion(a, 'a.')
  assertProportion(b, 'b.')
  const shareA = a.successes / a.trials
  const shareB = b.successes / b.trials
  const scoreA = scoreInterval({ share: shareA, trials: a.trials, level })
  const scoreB = scoreInterval({ share: shareB, trials: b.trials, level })
  return {
    lower: shareB - shareA - Math.hypot(shareB - scoreB.lower, scoreA.upper - shareA),
    upper: shareB - shareA + Math.hypot(scoreB.upper - shareB, shareA - scoreA.lower),
  }
}
