import { assertInRange } from './check-input.ts'
import { type RotiferStrain, SALINITY_RANGE } from './growth-prior.ts'

export type CapacityPrior = {
  /** Density at which a vessel in one caretaker's hands stops growing, per mL. */
  capacityPerMl: number
  /** Standard deviation of its logarithm. */
  logSd: number
  sources: string[]
}

/**
 * The middle, on a logarithmic scale, of a batch on dry diet that stops near 600 (FAO 361, sect. 3.5) and of 45 L tanks
 * on concentrate kept between 500 and 1,500 (Pfeiffer & Ludwig 2007).
 */
const USUAL_PER_ML = 720
/** Covers 320-1,600 in two standard deviations: those tanks, and a poor vessel at half of the batch; common practice. */
const LOG_SD = 0.4
/**
 * Small strains pack denser where food and oxygen are forced: 742-946 under harvest (LSU thesis 1537), 3,000-6,000 on
 * concentrated Chlorella (Fu et al. 1997). None of it was a vessel fed by hand, so only the doubt is wider; common practice.
 */
const SMALL_STRAIN_LOG_SD = 0.45

const FAO = 'FAO Fish. Tech. Pap. 361, sect. 3.5 (Lavens & Sorgeloos 1996); from memory'
const PFEIFFER = 'Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243'
const SPREAD = 'spread: common practice'

/**
 * What a small vessel of rotifers can hold before its counts have told. Temperature and salinity move how fast it gets
 * there (`growthPrior`); no series at hand shows that they move how much it holds. Null in fresh water, and when nothing
 * is known of strain, temperature or salinity: what is published is of brackish and marine Brachionus.
 * @throws ArgumentError when salinity is outside 0 to 97.
 */
export function capacityPrior({
  temperatureC,
  salinity,
  strain,
}: {
  temperatureC?: number
  salinity?: number
  strain?: RotiferStrain
}): CapacityPrior | null {
  if (salinity !== undefined) assertInRange('salinity', salinity, SALINITY_RANGE)
  if (salinity !== undefined && salinity < 1) return null
  if (temperatureC === undefined && salinity === undefined && strain === undefined) return null
  const isSmall = strain === 'S' || strain === 'SS'
  return {
    capacityPerMl: USUAL_PER_ML,
    logSd: isSmall ? SMALL_STRAIN_LOG_SD : LOG_SD,
    sources: [FAO, PFEIFFER, SPREAD],
  }
}
