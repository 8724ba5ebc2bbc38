import {
  type AllowedRange,
  ArgumentError,
  assertNotNegative,
  assertPositive,
  assertWhole,
  assertWithin,
} from './argument-error.ts'
import { density } from './density.ts'

/** Grams of dissolved sea salt in a kilogram of water of salinity 35: Millero et al. 2008, Deep-Sea Research I 55:50-72. */
const SALT_G_PER_KG_AT_35 = 35.16504

const SHARE: AllowedRange = { min: 0, max: 1, unit: '', because: 'a share of the volume' }

export type WaterPart = { volumeL: number; salinity: number }

/**
 * Share of what was dissolved that is left after so many equal batch changes: (1 - fraction) ** times.
 * @throws ArgumentError for a fraction outside 0..1 or a number of times that is not whole.
 */
export function afterWaterChanges({ fraction, times }: { fraction: number; times: number }): number {
  assertWithin('fraction', fraction, SHARE)
  assertWhole('times', times)
  return (1 - fraction) ** times
}

/**
 * Share left after a continuous, fully mixed change of volumeRatio = water passed / volume: exp(-volumeRatio).
 * @throws ArgumentError for a negative ratio.
 */
export function afterContinuousChange({ volumeRatio }: { volumeRatio: number }): number {
  assertNotNegative('volumeRatio', volumeRatio)
  return Math.exp(-volumeRatio)
}

/**
 * What is in the water right after the last of so many equal doses, each followed by a batch change before the next one.
 * The sum of dose * (1 - fraction) ** i; in the dose's unit.
 * @throws ArgumentError for a negative dose, a fraction outside 0..1, or a number of doses that is not whole.
 */
export function accumulatedDose({ dose, fraction, doses }: { dose: number; fraction: number; doses: number }): number {
  assertNotNegative('dose', dose)
  assertWithin('fraction', fraction, SHARE)
  assertWhole('doses', doses)
  return fraction === 0 ? dose * doses : (dose * (1 - (1 - fraction) ** doses)) / fraction
}

/**
 * Fraction to change so that a level goes from `current` to `target` when the new water holds `incoming` (one unit for all).
 * @throws ArgumentError when the target does not lie between current and incoming.
 */
export function changeFraction({
  current,
  incoming,
  target,
}: {
  current: number
  incoming: number
  target: number
}): number {
  assertNotNegative('current', current)
  assertNotNegative('incoming', incoming)
  assertWithin('target', target, {
    min: Math.min(current, incoming),
    max: Math.max(current, incoming),
    unit: '',
    because: 'between current and incoming',
  })
  return current === target ? 0 : (current - target) / (current - incoming)
}

/**
 * Salinity of waters mixed: the volume-weighted mean. Contraction and density are neglected, under 0.03 in salinity here.
 * @throws ArgumentError for no parts, a negative volume or salinity, or no water at all.
 */
export function mixedSalinity({ parts }: { parts: readonly WaterPart[] }): number {
  if (parts.length === 0) throw new ArgumentError({ argument: 'parts', value: '[]', allowed: 'at least one part' })
  parts.forEach(({ volumeL, salinity }, index) => {
    assertNotNegative(`parts[${index}].volumeL`, volumeL)
    assertNotNegative(`parts[${index}].salinity`, salinity)
  })
  const totalL = parts.reduce((sum, { volumeL }) => sum + volumeL, 0)
  if (totalL === 0)
    throw new ArgumentError({ argument: 'parts', value: '0 L', allowed: 'parts with some water in them' })
  return parts.reduce((sum, { volumeL, salinity }) => sum + salinity * (volumeL / totalL), 0)
}

/**
 * Salinity after part of the water evaporated and its salt stayed: S V / (V - E).
 * @throws ArgumentError for a negative amount or when nothing would be left.
 */
export function salinityAfterEvaporation({
  salinity,
  volumeL,
  evaporatedL,
}: WaterPart & { evaporatedL: number }): number {
  assertNotNegative('salinity', salinity)
  assertPositive('volumeL', volumeL)
  if (!(evaporatedL >= 0 && evaporatedL < volumeL)) {
    throw new ArgumentError({
      argument: 'evaporatedL',
      value: evaporatedL,
      allowed: `0 to under ${volumeL} L (volumeL)`,
    })
  }
  return (salinity * volumeL) / (volumeL - evaporatedL)
}

/**
 * Fresh water (L) to add to bring water down to a target salinity; what a top-up must replace after evaporation.
 * @throws ArgumentError when the target is 0 or above the present salinity.
 */
export function freshWaterToAddL({
  volumeL,
  salinity,
  targetSalinity,
}: WaterPart & { targetSalinity: number }): number {
  assertNotNegative('volumeL', volumeL)
  assertPositive('targetSalinity', targetSalinity)
  if (!(Number.isFinite(salinity) && salinity >= targetSalinity)) {
    throw new ArgumentError({
      argument: 'salinity',
      value: salinity,
      allowed: `at least targetSalinity (${targetSalinity})`,
    })
  }
  return volumeL * (salinity / targetSalinity - 1)
}

function saltGPerKg(salinity: number): number {
  return (SALT_G_PER_KG_AT_35 / 35) * salinity
}

const DRY_SHARE: AllowedRange = {
  min: 0.5,
  max: 1,
  unit: '',
  because: 'dry salt per gram of mix, from its own test batch',
}

export type SaltInput = WaterPart & {
  temperatureC: number
  /** Grams of dry sea salt in a gram of the mix; bagged mixes hold bound water, so weigh a test batch. 1 when not known. */
  dryShare?: number
}

/**
 * Salt (g) in, and so to weigh for, volumeL of finished water of this salinity at this temperature.
 * Volume times EOS-80 density times reference salinity (35.16504 g/kg at 35; Millero et al. 2008), over dryShare.
 * @throws ArgumentError for a negative volume, outside salinity 0..42 or -2..40 C, or dryShare outside 0.5..1.
 */
export function saltToMixG({ volumeL, salinity, temperatureC, dryShare = 1 }: SaltInput): number {
  assertNotNegative('volumeL', volumeL)
  assertWithin('dryShare', dryShare, DRY_SHARE)
  const waterKg = (volumeL * density({ salinity, temperatureC })) / 1000
  return (waterKg * saltGPerKg(salinity)) / dryShare
}

/**
 * Salt (g) to dissolve in water already there to raise it to a target salinity; its volume grows a little.
 * Salt balance by mass: M (s2 - s1) / (1000 - s2) with s in g/kg.
 * @throws ArgumentError when the target is under the present salinity, or as for saltToMixG.
 */
export function saltToRaiseG({
  volumeL,
  salinity,
  targetSalinity,
  temperatureC,
  dryShare = 1,
}: SaltInput & { targetSalinity: number }): number {
  assertNotNegative('volumeL', volumeL)
  assertWithin('dryShare', dryShare, DRY_SHARE)
  const waterG = volumeL * density({ salinity, temperatureC })
  assertWithin('targetSalinity', targetSalinity, {
    min: salinity,
    max: 42,
    unit: '',
    because: 'from the present salinity',
  })
  const [now, then] = [saltGPerKg(salinity), saltGPerKg(targetSalinity)]
  // The mix's bound water dilutes, so only its dry share beyond the target concentration counts.
  return (waterG * (then - now)) / (1000 * dryShare - then)
}

/**
 * Water (L) of the place of arrival to add to a bag, without taking any out, until they differ by no more than
 * `tolerance`. For salinity, or for temperature where the bag neither warms nor cools by itself (one unit for all three).
 * @throws ArgumentError for a negative volume, a tolerance of 0, or a value that is not finite.
 */
export function waterToMatchL({
  volumeL,
  current,
  target,
  tolerance,
}: {
  volumeL: number
  current: number
  target: number
  tolerance: number
}): number {
  assertNotNegative('volumeL', volumeL)
  assertPositive('tolerance', tolerance)
  for (const [argument, value] of [
    ['current', current],
    ['target', target],
  ] as const) {
    if (!Number.isFinite(value)) throw new ArgumentError({ argument, value, allowed: 'a finite number' })
  }
  return volumeL * Math.max(0, Math.abs(current - target) / tolerance - 1)
}
