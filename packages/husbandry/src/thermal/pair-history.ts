import type { SpeciesProfile, ThermalDuration } from '../species/index.ts'
import { checkNumber, checkTemperatureC } from './check.ts'
import type { Basis } from './forecast.ts'
import { type LogNormal, predictPair } from './pair-level.ts'
import { developmentRate } from './rate.ts'

/** One past duration of the pair, such as a clutch from spawning to its main hatch. */
export interface PastDuration {
  durationDays: number
  /** Mean temperature while it lasted; the reference temperature when left out. */
  temperatureC?: number | undefined
}

/** Days that a past duration may claim. */
const durationRange = { from: 0.5, to: 400 }

/**
 * The level of a thermal duration for one pair. Past durations are moved to the reference temperature first.
 * @param extraDays at the reference temperature, added to the species' median (brooding after hatch).
 */
export function pairLevel(duration: ThermalDuration, history: readonly PastDuration[], extraDays = 0): LogNormal {
  const past = history.map((entry, index) => {
    const days = checkNumber(`pairHistory[${index}].durationDays`, entry.durationDays, durationRange)
    const temperatureC = entry.temperatureC ?? duration.referenceTemperatureC.value
    return days * developmentRate(duration, checkTemperatureC(`pairHistory[${index}].temperatureC`, temperatureC))
  })
  return predictPair(
    {
      medianDays: duration.medianDays.value + extraDays,
      spreadBetweenPairs: duration.spreadBetweenPairs.value,
      spreadWithinPair: duration.spreadWithinPair.value,
    },
    past,
  )
}

/** What a thermal duration rests on, each with its source. */
export function thermalBasis(duration: ThermalDuration): Basis[] {
  const row = (name: string, unit: string, { value, source }: SpeciesProfile['secondNightShare']): Basis => ({
    name,
    value,
    unit,
    source,
  })
  return [
    row('median duration', 'days', duration.medianDays),
    row('at temperature', 'C', duration.referenceTemperatureC),
    row('faster per 10 °C', 'times', duration.q10),
    row('no faster past', 'C', duration.notBeyondC),
    row('spread between pairs', 'log', duration.spreadBetweenPairs),
    row('spread within a pair', 'log', duration.spreadWithinPair),
  ]
}
