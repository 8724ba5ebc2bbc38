import { getSpecies, type SpeciesInput, type ThermalDuration } from '../species/index.ts'
import { larvalQ10LogSpread } from '../species/thermal-defaults.ts'
import { checkInstant } from './check.ts'
import { type Forecast, forecast } from './forecast.ts'
import { daysFrom } from './nights.ts'
import { type PastDuration, pairLevel, thermalBasis } from './pair-history.ts'
import { type DurationDays, durationAt } from './rate.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

/**
 * Days from hatch to metamorphosis at a constant temperature.
 * A. melanopus: 12.3 d at 25 C, 9 d at 28 C (Green & Fisher 2004); other species borrow its slope.
 * @throws RangeError for an unknown id, a species without a larval stage, or a temperature outside 10 to 40 C.
 */
export function metamorphosisDays(input: { species: SpeciesInput; temperatureC: number }): DurationDays {
  return durationAt(larvalDuration(input.species), input.temperatureC, larvalQ10LogSpread.value)
}

export interface MetamorphosisInput extends TankWarmth {
  /** ISO 8601 instant of the batch's main hatch. */
  hatchedAt: string
  timeZone: string
  species: SpeciesInput
  /** Earlier batches of the pair, hatch to metamorphosis. */
  pairHistory?: readonly PastDuration[] | undefined
  /** An instant, or a local date for its morning, by which the batch had not turned. */
  notMetamorphosedBy?: string | undefined
}

/**
 * Probability, for each local date, that a larval batch turns into juveniles (its middle fish).
 * @throws RangeError naming the argument, its value and what is allowed.
 */
export function metamorphosis(input: MetamorphosisInput): Forecast {
  const duration = larvalDuration(input.species)
  const startMs = checkInstant('hatchedAt', input.hatchedAt)
  const history = input.pairHistory ?? []
  const by = input.notMetamorphosedBy
  return forecast({
    periods: daysFrom(startMs, input.timeZone),
    startMs,
    ...thermalClock(duration, startMs, input),
    level: pairLevel(duration, history),
    learnedFrom: history.length,
    notYet: by === undefined ? [] : [{ argument: 'notMetamorphosedBy', value: by }],
    basis: thermalBasis(duration),
  })
}

function larvalDuration(species: SpeciesInput): ThermalDuration {
  const profile = getSpecies(species)
  if (profile.larvalDuration) return profile.larvalDuration
  throw new RangeError(`species: ${profile.id} has no larval stage; its young leave the parent as juveniles`)
}
