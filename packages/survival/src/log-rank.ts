import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf'
import { Matrix, SingularValueDecomposition } from 'ml-matrix'
import { ArgumentError } from './argument-error.ts'
import { type Observation, type RiskSet, riskSets } from './observation.ts'

export type LogRank = {
  chiSquare: number
  /** Groups that can be compared, less one; 0 when no death happened while two groups were under watch. */
  degreesOfFreedom: number
  /** Chance of a chi-square this large were there no difference; 1 when nothing can be compared. */
  pValue: number
  observed: number[]
  expected: number[]
  /** Covariance of observed - expected, by group. */
  covariance: number[][]
}

/** Singular values under this share of the largest are rounding, not information. */
const RANK_TOLERANCE = 1e-10

/** A group's risk set at each of the times, both in order; between two of its own times nothing changes, so the next one holds. */
function alignToTimes(sets: readonly RiskSet[], times: readonly number[]): RiskSet[] {
  let next = 0
  return times.map((time) => {
    while (next < sets.length && sets[next]!.time < time) next += 1
    const set = sets[next]
    if (set?.time === time) return set
    const atRisk = set?.atRisk ?? 0
    return { time, atRisk, events: 0, survivors: atRisk }
  })
}

/** Adds one time's hypergeometric covariance of the deaths by group. */
function addCovariance(
  covariance: number[][],
  atRisk: readonly number[],
  totals: { atRisk: number; events: number },
): void {
  const { atRisk: n, events: d } = totals
  if (n <= 1) return
  const spread = (d * (n - d)) / (n - 1)
  atRisk.forEach((a, i) => {
    atRisk.forEach((b, j) => {
      covariance[i]![j]! += spread * ((i === j ? a / n : 0) - (a / n) * (b / n))
    })
  })
}

/** (O - E)' V+ (O - E) and the rank of V, which is singular by construction: its rows sum to 0. */
function quadraticForm(difference: readonly number[], covariance: number[][]): { chiSquare: number; rank: number } {
  const svd = new SingularValueDecomposition(new Matrix(covariance))
  const largest = Math.max(...svd.diagonal)
  if (!(largest > 0)) return { chiSquare: 0, rank: 0 }
  const row = Matrix.rowVector([...difference])
  const left = row.mmul(svd.leftSingularVectors).to1DArray()
  const right = row.mmul(svd.rightSingularVectors).to1DArray()
  const kept = svd.diagonal.flatMap((value, i) =>
    value > RANK_TOLERANCE * largest ? [(left[i]! * right[i]!) / value] : [],
  )
  return { chiSquare: kept.reduce((sum, term) => sum + term, 0), rank: kept.length }
}

export type DeathsByGroup = {
  observed: number[]
  /** Deaths each group would have had, had all groups died alike: its share of those at risk at every death. */
  expected: number[]
  /** Those at risk by group, at each time with a death. */
  atTimes: { atRisk: number[]; totals: { atRisk: number; events: number } }[]
}

/**
 * Deaths seen and expected in each group, by the risk sets of all groups together (Mantel 1966, as for logRank).
 * @throws ArgumentError for an empty group, or a number that is negative or missing.
 */
export function deathsByGroup(groups: readonly (readonly Observation[])[]): DeathsByGroup {
  const setsByGroup = groups.map((group, index) => riskSets(group, `groups[${index}]`))
  const eventTimes = setsByGroup.flatMap((sets) => sets.filter((set) => set.events > 0).map((set) => set.time))
  const times = [...new Set(eventTimes)].sort((a, b) => a - b)
  const aligned = setsByGroup.map((sets) => alignToTimes(sets, times))
  const expected = groups.map(() => 0)
  const atTimes = times.map((_, t) => {
    const here = aligned.map((sets) => sets[t]!)
    const atRisk = here.reduce((sum, set) => sum + set.atRisk, 0)
    const events = here.reduce((sum, set) => sum + set.events, 0)
    here.forEach((set, i) => {
      expected[i]! += (events * set.atRisk) / atRisk
    })
    return { atRisk: here.map((set) => set.atRisk), totals: { atRisk, events } }
  })
  return {
    observed: aligned.map((sets) => sets.reduce((sum, set) => sum + set.events, 0)),
    expected,
    atTimes,
  }
}

/** How many are alive and under watch just before each of these times. */
export function numbersAtRisk(observations: readonly Observation[], times: readonly number[]): number[] {
  return alignToTimes(riskSets(observations), times).map(({ atRisk }) => atRisk)
}

/**
 * Log-rank test that survival is the same in every group, with the hypergeometric variance at ties.
 * Mantel 1966, Cancer Chemother. Rep. 50:163-170; Peto & Peto 1972, J. R. Stat. Soc. A 135:185-207.
 * Weighted observations count as that many animals. A pValue under about 1e-16 comes out as 0.
 * @throws ArgumentError for fewer than two groups, an empty group, or a number that is negative or missing.
 */
export function logRank(groups: readonly (readonly Observation[])[]): LogRank {
  if (groups.length < 2) {
    throw new ArgumentError({ argument: 'groups', value: `${groups.length} groups`, allowed: 'at least two groups' })
  }
  const { observed, expected, atTimes } = deathsByGroup(groups)
  const covariance = groups.map(() => groups.map(() => 0))
  for (const { atRisk, totals } of atTimes) addCovariance(covariance, atRisk, totals)
  const difference = observed.map((deaths, i) => deaths - expected[i]!)
  const { chiSquare, rank } = quadraticForm(difference, covariance)
  const pValue = rank === 0 ? 1 : Math.max(0, 1 - chiSquareCdf(chiSquare, rank))
  return { chiSquare, degreesOfFreedom: rank, pValue, observed, expected, covariance }
}
