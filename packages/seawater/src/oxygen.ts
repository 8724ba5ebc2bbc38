import { type AllowedRange, assertNotNegative, assertWithin } from './argument-error.ts'

// Benson & Krause 1984, Limnol. Oceanogr. 29:620-632, in the mg/L form of Standard Methods 4500-O, Table I.
const FRESH = [-139.34411, 1.575701e5, -6.642308e7, 1.2438e10, -8.621949e11] as const
const PER_SALINITY = [0.017674, -10.754, 2140.7] as const

const TEMPERATURE: AllowedRange = { min: 0, max: 50, unit: 'C', because: 'Standard Methods Table 4500-O:I' }
const SALINITY: AllowedRange = { min: 0, max: 45.2, unit: '', because: 'Standard Methods tabulates to chlorinity 25' }

/**
 * Dissolved oxygen in equilibrium with water-saturated air at 760 mmHg, in mg/L.
 * Benson & Krause 1984 as in Standard Methods Table 4500-O:I; salinity is PSS-78, temperature in C.
 * @throws ArgumentError outside 0..50 C or salinity 0..45.2.
 */
export function oxygenSaturation({ salinity, temperatureC }: { salinity: number; temperatureC: number }): number {
  assertWithin('salinity', salinity, SALINITY)
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  const kelvin = temperatureC + 273.15
  const fresh = FRESH[0] + FRESH[1] / kelvin + FRESH[2] / kelvin ** 2 + FRESH[3] / kelvin ** 3 + FRESH[4] / kelvin ** 4
  const salt = PER_SALINITY[0] + PER_SALINITY[1] / kelvin + PER_SALINITY[2] / kelvin ** 2
  return Math.exp(fresh - salinity * salt)
}

/**
 * Share of saturation that a measured oxygen (mg/L) is: 1 at equilibrium, above 1 when supersaturated.
 * @throws ArgumentError for negative oxygen, or as for oxygenSaturation.
 */
export function oxygenShareOfSaturation({
  oxygenMgPerL,
  ...water
}: {
  oxygenMgPerL: number
  salinity: number
  temperatureC: number
}): number {
  assertNotNegative('oxygenMgPerL', oxygenMgPerL)
  return oxygenMgPerL / oxygenSaturation(water)
}
