import { type AllowedRange, assertNotNegative, assertWithin } from './argument-error.ts'

// The acid constant of ammonium rests on Bates & Pinching 1950 (0-50 C) through Emerson et al. 1975; a room needs 0 to 40 C.
const TEMPERATURE: AllowedRange = { min: 0, max: 40, unit: 'C', because: 'Emerson et al. 1975 and the pKa behind it' }
const SALINITY: AllowedRange = { min: 0, max: 45, unit: '', because: 'Bower & Bidwell 1978 to 40, 45 extrapolated' }
const PH: AllowedRange = { min: 4, max: 11, unit: '', because: 'the reach of test kits and glass electrodes' }

const SEA_SALINITY = 34

/** Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32:2379-2383. */
function freshPKa(temperatureC: number): number {
  return 0.09018 + 2729.92 / (temperatureC + 273.15)
}

/** Fits the percentages of Bower & Bidwell 1978, J. Fish. Res. Board Can. 35:1012-1016, at salinity 34, within 0.6 %. */
function seaPKa(temperatureC: number): number {
  return 9.35 + 0.0324 * (25 - temperatureC)
}

/** Molal ionic strength of sea water: Millero 1982, Ocean Sci. Eng. 7:403-460, as US EPA 440/5-88-004 (1989) uses it (from memory). */
function ionicStrength(salinity: number): number {
  return (19.9273 * salinity) / (1000 - 1.005109 * salinity)
}

export type AmmoniaInput = { pH: number; temperatureC: number; salinity: number }

export type UnionisedAmmonia = {
  /** Share of the total ammonia that is NH3, between 0 and 1. */
  fraction: number
  pKa: number
  /** The pH scale assumed: NBS buffers, which kits and aquarium electrodes are set by. */
  pHScale: 'NBS'
  /** True outside the tables that the formula was fitted to. */
  isExtrapolated: boolean
  basis: string
}

/**
 * The acid constant of ammonium on the NBS scale: Emerson 1975 in fresh water, Bower & Bidwell 1978 at salinity 34,
 * and in between linear in ionic strength (as Whitfield 1974 and US EPA 1989 have it).
 */
function ammoniumPKa(temperatureC: number, salinity: number): number {
  const fresh = freshPKa(temperatureC)
  return fresh + (seaPKa(temperatureC) - fresh) * (ionicStrength(salinity) / ionicStrength(SEA_SALINITY))
}

/**
 * Un-ionised ammonia with the scale, constant and source that it rests on.
 * @throws ArgumentError outside pH 4..11, 0..40 C or salinity 0..45.
 */
export function unionisedAmmonia({ pH, temperatureC, salinity }: AmmoniaInput): UnionisedAmmonia {
  assertWithin('pH', pH, PH)
  assertWithin('temperatureC', temperatureC, TEMPERATURE)
  assertWithin('salinity', salinity, SALINITY)
  const pKa = ammoniumPKa(temperatureC, salinity)
  const isFresh = salinity === 0
  return {
    fraction: 1 / (1 + 10 ** (pKa - pH)),
    pKa,
    pHScale: 'NBS',
    // Emerson tabulates to 30 C, Bower & Bidwell to 25 C and salinity 40.
    isExtrapolated: isFresh ? temperatureC > 30 : temperatureC > 25 || salinity > 40,
    basis: isFresh
      ? 'Emerson et al. 1975'
      : 'Bower & Bidwell 1978 at salinity 34, Emerson et al. 1975 at 0, linear in ionic strength between',
  }
}

/**
 * Share of total ammonia that is un-ionised (NH3), between 0 and 1, for the pH that test kits read (NBS scale).
 * Fresh water: Emerson et al. 1975. At salinity 34: within 2 % of Bower & Bidwell 1978. Continuous in salinity.
 * @throws ArgumentError outside pH 4..11, 0..40 C or salinity 0..45.
 */
export function unionisedAmmoniaFraction(input: AmmoniaInput): number {
  return unionisedAmmonia(input).fraction
}

/**
 * Un-ionised ammonia in mg/L, counted as nitrogen (NH3-N), from total ammonia nitrogen in mg/L.
 * Use convert(value, 'mg/L NH3-N', 'mg/L NH3') for the weight of NH3 itself.
 * @throws ArgumentError for a negative total, or as for unionisedAmmoniaFraction.
 */
export function unionisedAmmoniaNitrogen({
  totalAmmoniaNitrogenMgPerL,
  ...water
}: AmmoniaInput & { totalAmmoniaNitrogenMgPerL: number }): number {
  assertNotNegative('totalAmmoniaNitrogenMgPerL', totalAmmoniaNitrogenMgPerL)
  return totalAmmoniaNitrogenMgPerL * unionisedAmmoniaFraction(water)
}
