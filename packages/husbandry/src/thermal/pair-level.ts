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

/** Assumption: the species' spread within a pair weighs as much as this many past clutches of the pair's own. */
const spreadPriorClutches = 6

/**
 * What the pair's next duration will be, given its past ones (days, all at the reference temperature):
 * normal on log duration, prior by species, likelihood by its own history, predictive for one more clutch.
 * A pair whose own clutches scatter more than the species' spread widens it.
 */
export function predictPair(prior: LevelPrior, historyDays: readonly number[]): LogNormal {
  const withinVariance = withinPairVariance(prior.spreadWithinPair, historyDays)
  let precision = prior.spreadBetweenPairs ** -2
  let weighted = precision * Math.log(prior.medianDays)
  for (const days of historyDays) {
    const weight = 1 / (withinVariance + wholeNightVariance / days ** 2)
    precision += weight
    weighted += weight * Math.log(days)
  }
  return { logMean: weighted / precision, logSd: Math.sqrt(1 / precision + withinVariance) }
}

/** Pooled estimate: the prior's squared spread and the pair's own squares, less what counting whole nights adds. */
function withinPairVariance(spread: number, historyDays: readonly number[]): number {
  const degrees = historyDays.length - 1
  if (degrees < 1) return spread ** 2
  const logs = historyDays.map(Math.log)
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length
  const squares = logs.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  const own = Math.max(0, squares - (degrees * wholeNightVariance) / Math.exp(2 * mean))
  return (spreadPriorClutches * spread ** 2 + own) / (spreadPriorClutches + degrees)
}
