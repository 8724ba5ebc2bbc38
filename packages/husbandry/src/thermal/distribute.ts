import cdf from '@stdlib/stats-base-dists-normal-cdf'
import type { LogNormal } from './pair-level.ts'

/** The progress (days at the reference temperature) that one date or night covers. */
export interface DateSpan {
  fromDays: number
  toDays: number
  /** Share of the date that an observation has not yet ruled out, 0 to 1. */
  open: number
}

/** How well a duration (its natural log) fits what was seen, 0 to 1. */
export type Likelihood = (logDuration: number) => number

/** Stop once what is left is this small beside what was found: sums stay within 1e-9 of 1. */
const tailShare = 1e-12

/** Past this many standard deviations the normal density is zero in double precision. */
const farthestZ = 37

/**
 * Probability of each date, given the spans in order of time: the mass of the duration's distribution in the span,
 * weighed by what was seen and by how much of the span is still open, scaled to sum to 1.
 * Returns null when the observations leave no mass at all.
 */
export function distribute<Span extends DateSpan>(
  spans: Iterable<Span>,
  level: LogNormal,
  likelihood?: Likelihood,
): { span: Span; probability: number }[] | null {
  const weighed: { span: Span; weight: number }[] = []
  let total = 0
  let isTail = false
  for (const span of spans) {
    const lower = zOf(span.fromDays, level)
    const upper = zOf(span.toDays, level)
    const mass = likelihood ? weighedMass(lower, upper, level, likelihood) : normalMass(lower, upper)
    const weight = span.open * mass
    if (span.open > 0) weighed.push({ span, weight })
    total += weight
    // One date more than the tail needs, so that a remainder of the last night has a night to fall on.
    if (isTail) break
    isTail = upper > farthestZ || (total > 0 && cdf(-upper, 0, 1) <= tailShare * total)
  }
  if (!(total > 0)) return null
  return weighed.map(({ span, weight }) => ({ span, probability: weight / total }))
}

function zOf(days: number, { logMean, logSd }: LogNormal): number {
  return days > 0 ? (Math.log(days) - logMean) / logSd : Number.NEGATIVE_INFINITY
}

/** Share of a distribution that lies past a duration. */
export function shareBeyond(days: number, level: LogNormal): number {
  return cdf(-zOf(days, level), 0, 1)
}

/** Taken on whichever tail keeps its digits. */
function normalMass(lower: number, upper: number): number {
  return lower > 0 ? cdf(-lower, 0, 1) - cdf(-upper, 0, 1) : cdf(upper, 0, 1) - cdf(lower, 0, 1)
}

/** Simpson's rule over panels of at most 0.1 standard deviation. */
function weighedMass(lower: number, upper: number, level: LogNormal, likelihood: Likelihood): number {
  const from = Math.max(lower, -farthestZ)
  const to = Math.min(upper, farthestZ)
  if (to <= from) return 0
  const panels = 2 * Math.max(1, Math.ceil((to - from) / 0.2))
  const step = (to - from) / panels
  let sum = 0
  for (let index = 0; index <= panels; index++) {
    const z = from + index * step
    const weight = index === 0 || index === panels ? 1 : index % 2 === 1 ? 4 : 2
    sum += weight * Math.exp(-0.5 * z * z) * likelihood(level.logMean + level.logSd * z)
  }
  return (sum * step) / (3 * Math.sqrt(2 * Math.PI))
}
