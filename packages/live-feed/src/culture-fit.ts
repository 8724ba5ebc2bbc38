import { type Conditions, eventsBetween, type FilterRun, runFilter } from './culture-filter.ts'
import { type CultureHistory, toConditions, toEvents, toLogObservations } from './culture-history.ts'
import {
  assertParameters,
  type CultureParameters,
  type CultureRates,
  type EggHabits,
  eggHabitsOf,
  RATE_NAMES,
  ratePriors,
  ratesFromLogs,
} from './culture-parameters.ts'
import { posteriorAround } from './importance.ts'
import { covarianceAt, minimise } from './minimise.ts'

/** A normal's 95 % in standard deviations. */
const DEVIATE_95 = 1.959964

/** History checked and laid out for the filter, once, however often the filter is then run. */
function prepareHistory(history: CultureHistory) {
  const { dilutionPerDay } = toConditions(history)
  const observations = toLogObservations(history)
  const events = toEvents(history)
  const stretches = observations
    .slice(1)
    .map((observation, index) => eventsBetween(events, observations[index]!.day, observation.day))
  const run = (rates: CultureRates, habits: EggHabits): FilterRun => {
    const conditions: Conditions = { ...habits, dilutionPerDay }
    return runFilter({ observations, stretches, rates, conditions })
  }
  return { observations, events, dilutionPerDay, run }
}

function intervalsOf(logs: readonly number[], covariance: readonly (readonly number[])[]) {
  const ends = (index: number) => {
    const half = DEVIATE_95 * Math.sqrt(covariance[index]![index]!)
    const log = logs[index]!
    return { lower: Math.exp(log - half), upper: Math.exp(log + half) }
  }
  return Object.fromEntries(RATE_NAMES.map((name, index) => [name, ends(index)])) as CultureParameters['intervals']
}

/**
 * A culture's parameters from its counts, by maximum likelihood of the extended Kalman filter, held by weak published
 * priors on the logarithms so that a young culture gets sensible answers (see `ratePriors`). With one observation the
 * parameters are the priors. Intervals are 95 %, from the whole penalised likelihood around its peak (`posteriorAround`).
 * @throws ArgumentError when there is no observation, the days do not rise, or a figure cannot be.
 */
export function fitCulture(history: CultureHistory): CultureParameters {
  const { observations, run } = prepareHistory(history)
  const habits = eggHabitsOf(observations)
  const densestPerMl = Math.max(...observations.map((observation) => Math.exp(observation.logDensity)))
  const priors = ratePriors(history, densestPerMl)
  const cost = (logs: readonly number[]) => {
    let penalty = 0
    for (const [i, { mean, sd }] of priors.entries()) penalty += 0.5 * ((logs[i]! - mean) / sd) ** 2
    return penalty - run(ratesFromLogs(logs), habits).logLikelihood
  }
  const start = priors.map((prior) => prior.mean)
  const { point, isConverged } = minimise(cost, start)
  const { mean, covariance: logCovariance } = posteriorAround({ cost, point, covariance: covarianceAt(cost, point) })
  const rates = ratesFromLogs(point)
  return {
    ...rates,
    ...habits,
    logCovariance,
    intervals: intervalsOf(mean, logCovariance),
    logLikelihood: run(rates, habits).logLikelihood,
    observations: observations.length,
    isConverged,
  }
}

function habitsOf({ eggBaseline, eggSd, eggCarryOver }: EggHabits): EggHabits {
  return { eggBaseline, eggSd, eggCarryOver }
}

/** One filter pass with given parameters, checked. */
export function filterCulture(history: CultureHistory, parameters: CultureRates & EggHabits) {
  assertParameters(parameters)
  const prepared = prepareHistory(history)
  return { ...prepared, filtered: prepared.run(parameters, habitsOf(parameters)) }
}
