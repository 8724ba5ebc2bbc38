/** Normal on the logarithm of a duration. */
export interface LogNormal {
  logMean: number
  logSd: number
}

export interface LevelPrior {
  medianDays: number
  spreadBetweenPairs: number
  spreadWithinPair: number
}

/** A duration counted in whole nights is off by up to half a day either way: variance 1/12 day squared. */
const wholeNightVariance = 1 / 12

/**
 * What the pair's next duration will be, given its past ones (days, all at the reference temperature):
 * normal on log duration, prior by species, likelihood by its own history, predictive for one more clutch.
 */
export function predictPair(prior: LevelPrior, historyDays: readonly number[]): LogNormal {
  const withinVariance = prior.spreadWithinPair ** 2
  let precision = prior.spreadBetweenPairs ** -2
  let weighted = precision * Math.log(prior.medianDays)
  for (const days of historyDays) {
    const weight = 1 / (withinVariance + wholeNightVariance / days ** 2)
    precision += weight
    weighted += weight * Math.log(days)
  }
  return { logMean: weighted / precision, logSd: Math.sqrt(1 / precision + withinVariance) }
}
