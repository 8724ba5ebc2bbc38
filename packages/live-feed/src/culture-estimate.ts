import { assertInRange } from './check-input.ts'
import { DEVIATE_80 } from './culture-backtest.ts'
import { advance, type CultureState, type EggSighting, eggEffect } from './culture-filter.ts'
import { filterCulture } from './culture-fit.ts'
import type { CultureHistory } from './culture-history.ts'
import type { CultureParameters } from './culture-parameters.ts'
import { birthRate, eggDevelopmentDays } from './egg-ratio.ts'

export type CultureEstimate = {
  /** Where on the history's axis the estimate stands: after the last count, harvest and inoculation. */
  day: number
  /** Median, harvests up to `day` taken off. */
  densityPerMl: number
  lower80PerMl: number
  upper80PerMl: number
  /** Net growth per day at this density, dilution taken off, harvest not. */
  growthPerDay: number
  growthSdPerDay: number
  trend: 'rising' | 'steady' | 'falling'
  /** ln(1 + E) / egg time of the last count; null without eggs or a temperature. */
  birthRatePerDay: number | null
  /** Births less growth, dilution counted as growth lost; null with the birth rate. */
  deathRatePerDay: number | null
  dilutionPerDay: number
  parameters: CultureParameters
  state: CultureState
  eggs: EggSighting
}

/** A trend is called when growth is away from 0 by this many of its standard deviations: two in three sure; common practice. */
const TREND_DEVIATE = 0.43

function vitalRates(history: CultureHistory, growthPerDay: number, dilutionPerDay: number) {
  const eggRatio = history.observations.at(-1)?.eggRatio
  const none = { birthRatePerDay: null, deathRatePerDay: null }
  if (eggRatio === undefined || history.temperatureC === undefined) return none
  const developmentDays = eggDevelopmentDays({ temperatureC: history.temperatureC })
  const birthRatePerDay = birthRate({ eggRatio, developmentDays })
  return { birthRatePerDay, deathRatePerDay: birthRatePerDay - (growthPerDay + dilutionPerDay) }
}

/**
 * Where a culture stands now: density and growth with their doubt, from all its counts, harvests and inoculations.
 * `atDay` asks for a later moment than the last record.
 * @throws ArgumentError as for `fitCulture`, or when atDay is before the last record.
 */
export function estimateCulture(
  history: CultureHistory,
  parameters: CultureParameters,
  { atDay }: { atDay?: number } = {},
): CultureEstimate {
  const { observations, events, dilutionPerDay, filtered } = filterCulture(history, parameters)
  const lastCountDay = observations.at(-1)!.day
  const later = events.filter((event) => event.day >= lastCountDay)
  const lastDay = Math.max(lastCountDay, later.at(-1)?.day ?? lastCountDay)
  assertInRange('day of the last removal or addition', lastDay, { max: lastCountDay + 366 })
  if (atDay !== undefined) assertInRange('atDay', atDay, { min: lastDay, max: lastDay + 366 })
  const { eggBaseline, eggSd, eggCarryOver } = parameters
  const conditions = { dilutionPerDay, eggBaseline, eggSd, eggCarryOver }
  const day = atDay ?? lastDay
  const state = advance(filtered.state, parameters, { toDay: day, eggs: filtered.eggs, events: later, conditions })
  const densityPerMl = Math.exp(state.logDensity)
  const sd = Math.sqrt(state.varDensity)
  const crowding = parameters.growthPerDay / parameters.capacityPerMl
  const promised = eggEffect(parameters, conditions, filtered.eggs, day)
  const growthPerDay =
    parameters.growthPerDay - crowding * densityPerMl + promised.growth + state.spell - dilutionPerDay
  const slope = -crowding * densityPerMl
  const growthVariance =
    promised.variance + state.varSpell + 2 * slope * state.covariance + slope ** 2 * state.varDensity
  const growthSdPerDay = Math.sqrt(Math.max(0, growthVariance))
  const isSure = Math.abs(growthPerDay) > TREND_DEVIATE * growthSdPerDay
  return {
    day,
    densityPerMl,
    lower80PerMl: densityPerMl * Math.exp(-DEVIATE_80 * sd),
    upper80PerMl: densityPerMl * Math.exp(DEVIATE_80 * sd),
    growthPerDay,
    growthSdPerDay,
    trend: isSure ? (growthPerDay > 0 ? 'rising' : 'falling') : 'steady',
    ...vitalRates(history, growthPerDay, dilutionPerDay),
    dilutionPerDay,
    parameters,
    state,
    eggs: filtered.eggs,
  }
}
