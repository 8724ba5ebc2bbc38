import { filterCulture } from './culture-fit.ts'
import type { CultureHistory } from './culture-history.ts'
import type { CultureRates, EggHabits } from './culture-parameters.ts'

/** A normal's middle 80 % in standard deviations. */
export const DEVIATE_80 = 1.281552

export type BacktestDay = {
  day: number
  /** As counted. */
  densityPerMl: number
  /** Median of what was expected from earlier counts alone. */
  predictedPerMl: number
  /** Middle 80 % of the count that was expected, handling error included. */
  lower80PerMl: number
  upper80PerMl: number
  /** Standard deviation of the expectation's logarithm. */
  logSd: number
}

/**
 * What would have been said before each count: for every observation after the first, the expectation from earlier
 * observations, egg ratios and the harvests up to then. The parameters are taken as given, so pass ones fitted on an
 * earlier stretch.
 * @throws ArgumentError as for `fitCulture`, or when a parameter cannot be one.
 */
export function backtestCulture(history: CultureHistory, parameters: CultureRates & EggHabits): BacktestDay[] {
  const { observations, filtered } = filterCulture(history, parameters)
  return filtered.predictions.map((prediction, index) => {
    const observation = observations[index + 1]
    if (observation === undefined) throw new RangeError(`prediction ${index} has no observation`)
    const logSd = Math.sqrt(prediction.variance)
    return {
      day: observation.day,
      densityPerMl: observation.densityPerMl,
      predictedPerMl: Math.exp(prediction.logDensity),
      lower80PerMl: Math.exp(prediction.logDensity - DEVIATE_80 * logSd),
      upper80PerMl: Math.exp(prediction.logDensity + DEVIATE_80 * logSd),
      logSd,
    }
  })
}
