import { type AllowedRange, ArgumentError, assertPositive, assertWithin } from './argument-error.ts'
import { findRisingRoot } from './find-root.ts'
import { polynomial } from './polynomial.ts'
import { type TemperatureScale, toT68C } from './temperature-scale.ts'

// EOS-80 at one atmosphere: Millero & Poisson 1981, Deep-Sea Research 28A:625-629; UNESCO Tech. Pap. Mar. Sci. 36 and 44.
const PURE_WATER = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9]
const PER_SALINITY = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9]
const PER_SALINITY_TO_3_2 = [-5.72466e-3, 1.0227e-4, -1.6546e-6]
const PER_SALINITY_SQUARED = 4.8314e-4

const SALINITY: AllowedRange = { min: 0, max: 42, unit: '', because: 'EOS-80, Millero & Poisson 1981' }
const TEMPERATURE: AllowedRange = { min: -2, max: 40, unit: 'C', because: 'EOS-80, Millero & Poisson 1981' }

/** Volume expansion of hydrometer glass per C: 25e-6 reproduces the published sea-water hydrometer correction tables. */
const HYDROMETER_GLASS_PER_C = 2.5e-5

function eos80(salinity: number, t68C: number): number {
  return (
    polynomial(PURE_WATER, t68C) +
    polynomial(PER_SALINITY, t68C) * salinity +
    polynomial(PER_SALINITY_TO_3_2, t68C) * salinity ** 1.5 +
    PER_SALINITY_SQUARED * salinity * salinity
  )
}

/**
 * Density of sea water at one atmosphere, in kg/m3 (EOS-80).
 * Temperature in C on ITS-90 unless `temperatureScale` says IPTS-68; salinity is PSS-78.
 * @throws ArgumentError outside salinity 0..42 or -2..40 C.
 */
export function density({
  salinity,
  temperatureC,
  temperatureScale,
}: {
  salinity: number
  temperatureC: number
  temperatureScale?: TemperatureScale
}): number {
  assertWithin('salinity', salinity, SALINITY)
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  return eos80(salinity, toT68C(temperatureC, temperatureScale))
}

function pureWaterDensity(argument: string, temperatureC: number): number {
  assertWithin(argument, temperatureC, { ...TEMPERATURE, min: 0, because: 'fresh water as reference' })
  return eos80(0, toT68C(temperatureC))
}

/**
 * Specific gravity (no unit): density at temperatureC over that of pure water at referenceTemperatureC.
 * A specific gravity without both temperatures is ambiguous by about 0.003 (4 or 25 C as reference).
 * @throws ArgumentError outside salinity 0..42, -2..40 C, or a reference outside 0..40 C.
 */
export function specificGravity({
  salinity,
  temperatureC,
  referenceTemperatureC,
}: {
  salinity: number
  temperatureC: number
  referenceTemperatureC: number
}): number {
  return density({ salinity, temperatureC }) / pureWaterDensity('referenceTemperatureC', referenceTemperatureC)
}

/** Salinity of water whose density at t68C is known; `describe` turns a density back into the reading that was given. */
function salinityFromDensity(
  { densityKgPerM3, temperatureC }: { densityKgPerM3: number; temperatureC: number },
  reading: { argument: string; value: number; perDensity: number },
): number {
  const t68C = toT68C(temperatureC)
  const lowest = eos80(SALINITY.min, t68C)
  const highest = eos80(SALINITY.max, t68C)
  // 1e-9 relative is rounding on the way back from specificGravity, far under what any instrument reads.
  const slack = 1e-9 * lowest
  if (densityKgPerM3 >= lowest - slack && densityKgPerM3 <= highest + slack) {
    return findRisingRoot((salinity) => eos80(salinity, t68C) - densityKgPerM3, SALINITY_SEARCH)
  }
  const ends = [lowest, highest].map((end) => (end * reading.perDensity).toFixed(5))
  throw new ArgumentError({
    argument: reading.argument,
    value: reading.value,
    allowed: `${ends.join(' to ')} (salinity 0 to 42 at ${temperatureC} C, EOS-80)`,
  })
}

const SALINITY_SEARCH = { low: SALINITY.min, high: SALINITY.max }

/**
 * Practical salinity from a specific gravity whose two temperatures are known: the inverse of specificGravity.
 * @throws ArgumentError when the reading does not belong to a salinity of 0..42 at these temperatures.
 */
export function salinityFromSpecificGravity({
  specificGravity: value,
  temperatureC,
  referenceTemperatureC,
}: {
  specificGravity: number
  temperatureC: number
  referenceTemperatureC: number
}): number {
  assertPositive('specificGravity', value)
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  const reference = pureWaterDensity('referenceTemperatureC', referenceTemperatureC)
  return salinityFromDensity(
    { densityKgPerM3: value * reference, temperatureC },
    { argument: 'specificGravity', value, perDensity: 1 / reference },
  )
}

/**
 * Practical salinity from a glass hydrometer read at another temperature than it was made for.
 * The reading is relative to water at referenceTemperatureC and true at calibrationTemperatureC; the bulb grows
 * with temperature (glassExpansionPerC, default 25e-6, from the published correction tables).
 * @throws ArgumentError when the reading does not belong to a salinity of 0..42.
 */
export function salinityFromHydrometer({
  reading,
  temperatureC,
  calibrationTemperatureC,
  referenceTemperatureC,
  glassExpansionPerC = HYDROMETER_GLASS_PER_C,
}: {
  reading: number
  temperatureC: number
  calibrationTemperatureC: number
  referenceTemperatureC: number
  glassExpansionPerC?: number
}): number {
  assertPositive('reading', reading)
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  assertWithin('calibrationTemperatureC', calibrationTemperatureC, TEMPERATURE)
  assertWithin('glassExpansionPerC', glassExpansionPerC, { min: 0, max: 1e-3, unit: 'per C', because: 'a solid bulb' })
  const reference = pureWaterDensity('referenceTemperatureC', referenceTemperatureC)
  const bulb = 1 + glassExpansionPerC * (temperatureC - calibrationTemperatureC)
  return salinityFromDensity(
    { densityKgPerM3: (reading * reference) / bulb, temperatureC },
    { argument: 'reading', value: reading, perDensity: bulb / reference },
  )
}
