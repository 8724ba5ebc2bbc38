import { assertInRange, assertPositive } from './check-input.ts'

/** 50-150 rotifers per mL in algae-fed batch tanks: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361). */
export const INOCULUM_RANGE_PER_ML = { lower: 50, upper: 150 } as const

/** An abrupt change of more than 5 in salinity inhibits or kills: Treece & Davis 2000, SRAC Publication 701. */
export const SALINITY_SHOCK = 5

export type Inoculum = {
  densityPerMl: number
  verdict: 'too-thin' | 'within-range' | 'denser-than-needed'
  /** Animals for the lower and upper end of the published range in this volume. */
  animalsLower: number
  animalsUpper: number
  /** Null when a salinity is not given. */
  needsAcclimation: boolean | null
}

/**
 * Whether so many animals start a culture of this volume well (50-150 per mL), and whether the two salinities are too
 * far apart to tip them in at once (more than 5).
 * @throws ArgumentError when animals, volumeL or a salinity cannot be one.
 */
export function inoculum({
  animals,
  volumeL,
  fromSalinity,
  toSalinity,
}: {
  animals: number
  volumeL: number
  fromSalinity?: number
  toSalinity?: number
}): Inoculum {
  assertInRange('animals', animals, { min: 0, unit: 'animals' })
  assertPositive('volumeL', volumeL, 'L')
  if (fromSalinity !== undefined) assertInRange('fromSalinity', fromSalinity, { min: 0, max: 97 })
  if (toSalinity !== undefined) assertInRange('toSalinity', toSalinity, { min: 0, max: 97 })
  const { lower, upper } = INOCULUM_RANGE_PER_ML
  const volumeMl = volumeL * 1000
  const densityPerMl = animals / volumeMl
  const verdict = densityPerMl < lower ? 'too-thin' : densityPerMl > upper ? 'denser-than-needed' : 'within-range'
  const isKnown = fromSalinity !== undefined && toSalinity !== undefined
  return {
    densityPerMl,
    verdict,
    animalsLower: lower * volumeMl,
    animalsUpper: upper * volumeMl,
    needsAcclimation: isKnown ? Math.abs(fromSalinity - toSalinity) > SALINITY_SHOCK : null,
  }
}
