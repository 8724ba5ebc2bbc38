import { ArgumentError } from '@fryward/survival'
import { assertInRange, assertLength, assertPositive } from './check-input.ts'
import { minimise } from './minimise.ts'

export type LocalLevelInput = {
  /** Values in order, evenly spaced; null where one is missing. */
  series: readonly (number | null)[]
  observationVariance: number
  levelVariance: number
  initialMean: number
  initialVariance: number
}

export type LocalLevelResult = {
  /** One more than the series: entry 0 is the initial state, entry i what is expected before value i is seen. */
  predictedMeans: number[]
  predictedVariances: number[]
  /** As long as the series: the level once value i has been seen. */
  filteredMeans: number[]
  filteredVariances: number[]
  logLikelihood: number
}

const LOG_TWO_PI = Math.log(2 * Math.PI)

function assertSeries(series: readonly (number | null)[]): void {
  assertLength('series', series)
  for (const [index, value] of series.entries()) if (value !== null) assertInRange(`series[${index}]`, value)
}

/**
 * Kalman filter of a local level: the level takes a random step of `levelVariance` between values, each value is seen
 * with `observationVariance`. Durbin & Koopman 2012, Time Series Analysis by State Space Methods, sect. 2.2.
 * The log likelihood counts every value that is present, with its -1/2 log(2 pi).
 * @throws ArgumentError when series is empty or holds NaN, a variance is negative, or nothing at all may vary.
 */
export function localLevelFilter(input: LocalLevelInput): LocalLevelResult {
  const { series, observationVariance, levelVariance, initialMean, initialVariance } = input
  assertSeries(series)
  assertInRange('observationVariance', observationVariance, { min: 0 })
  assertInRange('levelVariance', levelVariance, { min: 0 })
  assertInRange('initialMean', initialMean)
  assertInRange('initialVariance', initialVariance, { min: 0 })
  if (observationVariance + initialVariance === 0) {
    throw new ArgumentError({
      argument: 'observationVariance',
      value: observationVariance,
      allowed: 'above 0 when initialVariance is 0',
    })
  }
  const result: LocalLevelResult = {
    predictedMeans: [initialMean],
    predictedVariances: [initialVariance],
    filteredMeans: [],
    filteredVariances: [],
    logLikelihood: 0,
  }
  let mean = initialMean
  let variance = initialVariance
  for (const value of series) {
    const total = variance + observationVariance
    if (value !== null && total > 0) {
      const surprise = value - mean
      const gain = variance / total
      result.logLikelihood -= 0.5 * (LOG_TWO_PI + Math.log(total) + surprise ** 2 / total)
      mean += gain * surprise
      variance *= 1 - gain
    }
    result.filteredMeans.push(mean)
    result.filteredVariances.push(variance)
    variance += levelVariance
    result.predictedMeans.push(mean)
    result.predictedVariances.push(variance)
  }
  return result
}

export type LocalLevelFit = {
  observationVariance: number
  levelVariance: number
  /** Of all values after the first, the first one being taken as the initial level (exact diffuse). */
  logLikelihood: number
  isConverged: boolean
}

/**
 * Both variances of a local level by maximum likelihood, nothing assumed about the level before the first value
 * (exact diffuse start: Durbin & Koopman 2012, sect. 2.9).
 * @throws ArgumentError when series has fewer than 3 values, a gap, or all values alike.
 */
export function fitLocalLevel({ series }: { series: readonly number[] }): LocalLevelFit {
  assertLength('series', series, 3)
  assertSeries(series)
  const rest = series.slice(1)
  const differences = rest.map((value, i) => value - series[i]!)
  const scale = differences.reduce((sum, step) => sum + step * step, 0) / differences.length
  assertPositive('variance of the steps of series', scale)
  const run = (logs: readonly number[]) => {
    const observationVariance = scale * Math.exp(logs[0]!)
    const levelVariance = scale * Math.exp(logs[1]!)
    const initialVariance = observationVariance + levelVariance
    const { logLikelihood } = localLevelFilter({
      series: rest,
      observationVariance,
      levelVariance,
      initialMean: series[0]!,
      initialVariance,
    })
    return { observationVariance, levelVariance, logLikelihood }
  }
  const { point, isConverged } = minimise((logs) => -run(logs).logLikelihood, [-1, -2])
  return { ...run(point), isConverged }
}
