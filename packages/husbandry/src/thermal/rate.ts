import type { ThermalDuration } from '../species/index.ts'
import { checkTemperatureC } from './check.ts'

/**
 * Days of development at the reference temperature that one day at this temperature is worth:
 * q10^((T - reference) / 10), held level above notBeyondC. Never falls as water warms.
 */
export function developmentRate(duration: ThermalDuration, temperatureC: number): number {
  const effectiveC = Math.min(temperatureC, duration.notBeyondC.value)
  return duration.q10.value ** ((effectiveC - duration.referenceTemperatureC.value) / 10)
}

export function isOutsideTried(duration: ThermalDuration, temperatureC: number): boolean {
  const { from, to } = duration.triedC.value
  return temperatureC < from || temperatureC > to
}

export interface DurationDays {
  /** Median over pairs and clutches. */
  days: number
  /** Central 80 % over pairs and clutches; the slope's own uncertainty is in it when one is given. */
  lower80Days: number
  upper80Days: number
  /** True outside the temperatures at which durations were seen. */
  isExtrapolated: boolean
  triedC: { from: number; to: number }
}

/** Standard normal quantile at 0.9. */
const z90 = 1.2815515655446004

/** A thermal duration at one constant temperature (C), in days. */
export function durationAt(duration: ThermalDuration, temperatureC: number, q10LogSpread: number): DurationDays {
  checkTemperatureC('temperatureC', temperatureC)
  const days = duration.medianDays.value / developmentRate(duration, temperatureC)
  const slopeSpread = (q10LogSpread * (temperatureC - duration.referenceTemperatureC.value)) / 10
  const logSd = Math.hypot(duration.spreadBetweenPairs.value, duration.spreadWithinPair.value, slopeSpread)
  return {
    days,
    lower80Days: days * Math.exp(-z90 * logSd),
    upper80Days: days * Math.exp(z90 * logSd),
    isExtrapolated: isOutsideTried(duration, temperatureC),
    triedC: duration.triedC.value,
  }
}
