import { capacityPrior } from './capacity-prior.ts'
import { assertInRange, assertPositive } from './check-input.ts'
import type { CultureHistory } from './culture-history.ts'
import { eggDevelopmentDays } from './egg-ratio.ts'
import { growthPrior } from './growth-prior.ts'

/**
 * How a culture grows and how it is counted. Log density x and a passing deviation of growth u move by
 *   dx/dt = growth * (1 - density / capacity) + eggWeight * (ln(1 + E) - eggBaseline) + u - dilution, and u falls back to 0.
 */
export type CultureRates = {
  /** Net growth per day of a thin culture with its usual egg ratio, before dilution and harvest. */
  growthPerDay: number
  capacityPerMl: number
  /** Growth per day for each unit of ln(1 + eggs per female) above the baseline: 1 / egg time if nothing were lost. */
  eggWeightPerDay: number
  /** How fast a good or bad spell passes, per day: 0.5 halves it in 1.4 days. */
  reversionPerDay: number
  /** Standard deviation of the spells' growth, per day. */
  spellSdPerDay: number
  /** Standard deviation of what one day adds to log density unexplained. */
  dailySd: number
  /** Log standard deviation of a count beyond chance: mixing, pipette, eye. */
  handlingSd: number
}

export const RATE_NAMES = [
  'growthPerDay',
  'capacityPerMl',
  'eggWeightPerDay',
  'reversionPerDay',
  'spellSdPerDay',
  'dailySd',
  'handlingSd',
] as const satisfies readonly (keyof CultureRates)[]

/** How ln(1 + eggs per female) behaves in this culture, for the days on which eggs were not counted. */
export type EggHabits = {
  /** Its mean; what a day without an egg count is taken to have. */
  eggBaseline: number
  /** Its standard deviation; 0 when eggs were counted fewer than five times. */
  eggSd: number
  /** Share of today's deviation that is left tomorrow. */
  eggCarryOver: number
}

export type CultureParameters = CultureRates &
  EggHabits & {
    /** Covariance of the logarithms of the rates, in the order of `RATE_NAMES`. */
    logCovariance: readonly (readonly number[])[]
    /** 95 % interval of each rate. */
    intervals: Record<keyof CultureRates, { lower: number; upper: number }>
    /** Of the observations after the first, at these parameters. */
    logLikelihood: number
    observations: number
    isConverged: boolean
  }

export type LogPrior = { mean: number; sd: number }

/** Spread of a prior that only keeps a short history from absurd answers; common practice. */
const WEAK_SD = 1

/** Usual egg ratio when none was counted: middle of the stationary and growing bands, 0.5 (Snell et al. 1987). */
const USUAL_LOG_EGGS = Math.log1p(0.5)

/**
 * Priors of the log rates, weak enough that a few weeks of counts outweigh them. Growth: `growthPrior`, as kept. Capacity: the
 * room's own figure, else `capacityPrior`, else about twice the densest count. Egg weight: 1 / egg time (Paloheimo 1974).
 * The rest, half a day's spell and noise near a tenth, is common practice.
 */
export function ratePriors(history: CultureHistory, densestPerMl: number): LogPrior[] {
  const growth = growthPrior(history)
  const eggDays = eggDevelopmentDays({ temperatureC: history.temperatureC ?? 25 })
  return [
    { mean: Math.log(growth.keptGrowthPerDay), sd: growth.logSd },
    capacityPriorOf(history, densestPerMl),
    { mean: Math.log(1 / eggDays), sd: 0.5 },
    { mean: Math.log(0.5), sd: WEAK_SD },
    { mean: Math.log(0.1), sd: WEAK_SD },
    { mean: Math.log(0.12), sd: WEAK_SD },
    { mean: Math.log(0.12), sd: 0.7 },
  ]
}

function capacityPriorOf(history: CultureHistory, densestPerMl: number): LogPrior {
  if (history.capacityPerMl !== undefined) return { mean: Math.log(history.capacityPerMl), sd: 0.3 }
  const published = capacityPrior(history)
  if (published === null) return { mean: Math.log(2 * densestPerMl), sd: WEAK_SD }
  return { mean: Math.log(published.capacityPerMl), sd: published.logSd }
}

export const ratesFromLogs = (logs: readonly number[]): CultureRates =>
  Object.fromEntries(RATE_NAMES.map((name, index) => [name, Math.exp(logs[index]!)])) as CultureRates

export const logsFromRates = (rates: CultureRates): number[] => RATE_NAMES.map((name) => Math.log(rates[name]))

/** Fewer egg counts than this say nothing about their spread; common practice. */
const EGG_COUNTS_NEEDED = 5

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Mean, spread and day-to-day carry-over of the egg counts of a history. */
export function eggHabitsOf(observations: readonly { day: number; logEggs: number | null }[]): EggHabits {
  const seen = observations.flatMap(({ day, logEggs }) => (logEggs === null ? [] : [{ day, logEggs }]))
  const values = seen.map(({ logEggs }) => logEggs)
  if (seen.length === 0) return { eggBaseline: USUAL_LOG_EGGS, eggSd: 0, eggCarryOver: 0 }
  const eggBaseline = mean(values)
  if (seen.length < EGG_COUNTS_NEEDED) return { eggBaseline, eggSd: 0, eggCarryOver: 0 }
  const variance = values.reduce((sum, value) => sum + (value - eggBaseline) ** 2, 0) / (values.length - 1)
  const products = seen.flatMap(({ day, logEggs }, i) => {
    const before = seen[i - 1]
    if (before === undefined || day - before.day > 1.5) return []
    return [(logEggs - eggBaseline) * (before.logEggs - eggBaseline)]
  })
  const isEnough = products.length >= EGG_COUNTS_NEEDED && variance > 0
  const eggCarryOver = isEnough ? Math.min(0.95, Math.max(0, mean(products) / variance)) : 0
  return { eggBaseline, eggSd: Math.sqrt(variance), eggCarryOver }
}

/** @throws ArgumentError when a rate that must be above 0 is not, or an egg habit cannot be one. */
export function assertParameters(parameters: CultureRates & EggHabits): void {
  for (const name of RATE_NAMES) assertPositive(`parameters.${name}`, parameters[name])
  assertInRange('parameters.eggBaseline', parameters.eggBaseline, { min: 0 })
  assertInRange('parameters.eggSd', parameters.eggSd, { min: 0 })
  assertInRange('parameters.eggCarryOver', parameters.eggCarryOver, { min: 0, max: 0.95 })
}
