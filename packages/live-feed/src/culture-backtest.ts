import { filterCulture } from './culture-fit.ts'
import type { CultureHistory } from './culture-history.ts'
import type { CultureParameters } from './culture-parameters.ts'
import { seededRandom } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

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

/** Sets of rates tried around the estimates; enough for a spread to a tenth of itself. */
const RATE_DRAWS = 40

/**
 * What would have been said before each count: for every observation after the first, the expectation from earlier
 * observations, egg ratios and the harvests up to then. The parameters are taken as given, so pass ones fitted on an
 * earlier stretch; how surely that stretch pinned them down (`logCovariance`) widens the band.
 * @throws ArgumentError as for `fitCulture`, or when a parameter cannot be one.
 */
export function backtestCulture(history: CultureHistory, parameters: CultureParameters): BacktestDay[] {
  const { observations, filtered, run } = filterCulture(history, parameters)
  const drawRates = rateDrawer(parameters, seededRandom(1))
  const draws = Array.from({ length: RATE_DRAWS }, () => run(drawRates(), parameters).predictions)
  return filtered.predictions.map(({ logDensity, variance: own }, index) => {
    const observation = observations[index + 1]!
    // On top of what the estimates leave open: how far the answers of other likely rates lie from theirs.
    let variance = own
    for (const predictions of draws) variance += (predictions[index]!.logDensity - logDensity) ** 2 / RATE_DRAWS
    const logSd = Math.sqrt(variance)
    return {
      day: observation.day,
      densityPerMl: observation.densityPerMl,
      predictedPerMl: Math.exp(logDensity),
      lower80PerMl: Math.exp(logDensity - DEVIATE_80 * logSd),
      upper80PerMl: Math.exp(logDensity + DEVIATE_80 * logSd),
      logSd,
    }
  })
}
