import { type AllowedRange, ArgumentError, assertNotNegative, assertWithin } from './argument-error.ts'
import { findRisingRoot } from './find-root.ts'
import { polynomial } from './polynomial.ts'
import { type TemperatureScale, toT68C } from './temperature-scale.ts'

// PSS-78 and its inverse: Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, pp. 6-12;
// Lewis & Perkin 1981, Deep-Sea Research 28A:307-328.
const SALINITY_AT_15 = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081]
const SALINITY_PER_DEGREE = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144]
const RATIO_OF_35 = [0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9]
const PRESSURE = [0, 2.07e-5, -6.37e-10, 3.989e-15]
const PRESSURE_BY_TEMPERATURE = [1, 3.426e-2, 4.464e-4]
const PRESSURE_BY_RATIO = [0.4215, -3.107e-3]

/** Conductivity of water of salinity 35 at 15 C (IPTS-68) and no pressure: Culkin & Smith 1980, IEEE J. Oceanic Eng. 5:22-23. */
const CONDUCTIVITY_35_15_0_MS_PER_CM = 42.914

/** Below this PSS-78 gives way to the extension of Hill, Dauphinee & Woods 1986, IEEE J. Oceanic Eng. 11:109-112. */
const HILL_BELOW_SALINITY = 2

const SALINITY: AllowedRange = { min: 0, max: 42, unit: '', because: 'PSS-78 to 42, Hill et al. 1986 under 2' }
const TEMPERATURE: AllowedRange = { min: -2, max: 40, unit: 'C', because: 'UNESCO 44 tabulates to 40 C' }
const PRESSURE_DBAR: AllowedRange = { min: 0, max: 10000, unit: 'dbar', because: 'UNESCO 44' }

export type WaterConditions = {
  temperatureC: number
  /** Above the atmosphere's own; a room has 0. */
  pressureDbar?: number
  temperatureScale?: TemperatureScale
}

type Checked = { t68C: number; pressureDbar: number }

function check({ temperatureC, pressureDbar = 0, temperatureScale }: WaterConditions): Checked {
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  assertWithin('pressureDbar', pressureDbar, PRESSURE_DBAR)
  return { t68C: toT68C(temperatureC, temperatureScale), pressureDbar }
}

function temperatureTerm(t68C: number): number {
  return (t68C - 15) / (1 + 0.0162 * (t68C - 15))
}

function pss78(root: number, t68C: number): number {
  return polynomial(SALINITY_AT_15, root) + temperatureTerm(t68C) * polynomial(SALINITY_PER_DEGREE, root)
}

/** What Hill et al. 1986 take off PSS-78 in nearly fresh water; `root` is the square root of the ratio Rt. */
function hillCorrection(root: number, t68C: number): number {
  const x = 400 * root * root
  const rootY = 10 * root
  return 0.008 / (1 + x * (1.5 + x)) + (0.0005 * temperatureTerm(t68C)) / (1 + rootY * (1 + rootY * (1 + rootY)))
}

/** Scaled, as TEOS-10 does, so that both formulas meet exactly at salinity 2. */
function salinityFromRoot(root: number, t68C: number): number {
  const salinity = pss78(root, t68C)
  if (salinity >= HILL_BELOW_SALINITY) return salinity
  const rootAt2 = findRisingRoot((r) => pss78(r, t68C) - HILL_BELOW_SALINITY, { low: 0.1, high: 1 })
  const scale = HILL_BELOW_SALINITY / (HILL_BELOW_SALINITY - hillCorrection(rootAt2, t68C))
  return Math.max(0, scale * (salinity - hillCorrection(root, t68C)))
}

function pressureFactor(ratio: number, { t68C, pressureDbar }: Checked): number {
  const bottom = polynomial(PRESSURE_BY_TEMPERATURE, t68C) + polynomial(PRESSURE_BY_RATIO, t68C) * ratio
  return 1 + polynomial(PRESSURE, pressureDbar) / bottom
}

/**
 * Practical salinity (PSS-78, no unit) from the conductivity ratio R = C(S,t,p) / C(35,15,0).
 * Pressure in dbar, temperature in C on ITS-90 unless `temperatureScale` says IPTS-68.
 * Source: UNESCO 44 (1983); under salinity 2 Hill et al. 1986, made continuous.
 * @throws ArgumentError outside -2..40 C, 0..10000 dbar, for a negative ratio, or when the salinity would pass 42.
 */
export function practicalSalinity({
  conductivityRatio,
  ...conditions
}: WaterConditions & { conductivityRatio: number }): number {
  assertNotNegative('conductivityRatio', conductivityRatio)
  const checked = check(conditions)
  const rt = conductivityRatio / (polynomial(RATIO_OF_35, checked.t68C) * pressureFactor(conductivityRatio, checked))
  const salinity = salinityFromRoot(Math.sqrt(rt), checked.t68C)
  // A hair over 42 is rounding on the way back from the inverse.
  if (salinity <= SALINITY.max + 1e-9) return Math.min(salinity, SALINITY.max)
  throw new ArgumentError({
    argument: 'conductivityRatio',
    value: conductivityRatio,
    allowed: 'a ratio that means salinity 0 to 42 (PSS-78)',
  })
}

/**
 * Practical salinity from a conductivity that is not temperature-compensated, in mS/cm.
 * @throws ArgumentError as for practicalSalinity.
 */
export function practicalSalinityFromConductivity({
  conductivityMsPerCm,
  ...conditions
}: WaterConditions & { conductivityMsPerCm: number }): number {
  assertNotNegative('conductivityMsPerCm', conductivityMsPerCm)
  return practicalSalinity({ ...conditions, conductivityRatio: conductivityMsPerCm / CONDUCTIVITY_35_15_0_MS_PER_CM })
}

/**
 * Conductivity ratio R of water of a practical salinity: the inverse of practicalSalinity.
 * The temperature ratio is found by bisection; pressure by the quadratic of UNESCO 44, p. 11.
 * @throws ArgumentError outside salinity 0..42, -2..40 C, 0..10000 dbar.
 */
export function conductivityRatio({ salinity, ...conditions }: WaterConditions & { salinity: number }): number {
  assertWithin('salinity', salinity, SALINITY)
  const checked = check(conditions)
  const { t68C } = checked
  const root = findRisingRoot((r) => salinityFromRoot(r, t68C) - salinity, { low: 0, high: 1.3 })
  const rt = polynomial(RATIO_OF_35, t68C) * root * root
  const a = polynomial(PRESSURE_BY_RATIO, t68C)
  const b = polynomial(PRESSURE_BY_TEMPERATURE, t68C)
  const c = polynomial(PRESSURE, checked.pressureDbar)
  const linear = b - rt * a
  return (Math.sqrt(linear * linear + 4 * a * rt * (b + c)) - linear) / (2 * a)
}

/**
 * Conductivity, not temperature-compensated, of water of a practical salinity, in mS/cm.
 * @throws ArgumentError as for conductivityRatio.
 */
export function conductivityFromSalinity(input: WaterConditions & { salinity: number }): number {
  return CONDUCTIVITY_35_15_0_MS_PER_CM * conductivityRatio(input)
}
