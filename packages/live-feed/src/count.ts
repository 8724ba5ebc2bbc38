import { ArgumentError, poissonInterval } from '@fryward/survival'
import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf'
import { assertLength, assertPositive, assertWholeNumber } from './check-input.ts'
import { normalDeviate, studentDeviate } from './student.ts'

/** Replicates are called more uneven than random when chance alone would do it less often than this; common practice. */
const OVERDISPERSION_P_VALUE = 0.05

export type CountSample = {
  /** Animals seen in each replicate, whole numbers. */
  animals: readonly number[]
  /** Volume looked through per replicate, mL. */
  volumeMl: number
  /** How many times the sample was diluted before counting: 1 is not at all, 10 is one part in ten. */
  dilution?: number
  /** Confidence level of the interval; 0.95 unless given. */
  level?: number
}

export type Dispersion = {
  /** Variance of the replicates over their mean: about 1 when animals fall at random. */
  index: number
  /** Chance of replicates at least this uneven when animals fall at random; 1 with a single replicate. */
  pValue: number
  overdispersed: boolean
}

export type Density = {
  densityPerMl: number
  lowerPerMl: number
  upperPerMl: number
  animalsCounted: number
  replicates: number
  dispersion: Dispersion
  /** Standard error over the mean, 1/sqrt(n), times the root of the index where that counts; null when nothing was counted. */
  coefficientOfVariation: number | null
}

function dispersionOf(animals: readonly number[], total: number): Dispersion {
  const replicates = animals.length
  // One replicate, or none seen at all, says nothing about unevenness.
  if (replicates < 2 || total === 0) return { index: 1, pValue: 1, overdispersed: false }
  const mean = total / replicates
  const chiSquare = animals.reduce((sum, count) => sum + (count - mean) ** 2 / mean, 0)
  const index = chiSquare / (replicates - 1)
  const pValue = 1 - chiSquareCdf(chiSquare, replicates - 1)
  return { index, pValue, overdispersed: pValue < OVERDISPERSION_P_VALUE }
}

/**
 * How much wider than chance alone: the square root of the index, times Student's deviate over the normal's because few
 * replicates know the index badly. Two replicates are given three's, or they would say nothing at all.
 */
function wideningFactor({ index, overdispersed }: Dispersion, replicates: number, level: number): number {
  if (!overdispersed) return 1
  return (Math.sqrt(index) * studentDeviate(level, Math.max(2, replicates - 1))) / normalDeviate(level)
}

/**
 * Density of animals per mL from a counted sample: total / (replicates * volumeMl) * dilution.
 *
 * The interval is Garwood's exact one on the total (1936, Biometrika 28:437-442). When the replicates vary more than
 * chance allows (index of dispersion, Fisher's chi-square test) both ends move away by the square root of the index and
 * Student's deviate, as a ratio, so that the lower end stays above 0. Two or three replicates often hide clumping: six
 * tell.
 * @throws ArgumentError when animals is empty or holds anything but whole numbers from 0, or a volume, dilution or
 * level cannot be one.
 */
export function densityFromCounts({ animals, volumeMl, dilution = 1, level = 0.95 }: CountSample): Density {
  assertLength('animals', animals)
  for (const [index, count] of animals.entries()) assertWholeNumber(`animals[${index}]`, count)
  assertPositive('volumeMl', volumeMl, 'mL')
  if (!(Number.isFinite(dilution) && dilution >= 1)) {
    throw new ArgumentError({ argument: 'dilution', value: dilution, allowed: 'a finite number from 1 (undiluted)' })
  }
  const animalsCounted = animals.reduce((sum, count) => sum + count, 0)
  const dispersion = dispersionOf(animals, animalsCounted)
  const exact = poissonInterval({ count: animalsCounted, level })
  const widening = wideningFactor(dispersion, animals.length, level)
  const clumping = dispersion.overdispersed ? Math.sqrt(dispersion.index) : 1
  const perMl = dilution / (animals.length * volumeMl)
  const widen = (end: number) => (widening === 1 ? end : animalsCounted * (end / animalsCounted) ** widening)
  return {
    densityPerMl: animalsCounted * perMl,
    lowerPerMl: widen(exact.lower) * perMl,
    upperPerMl: widen(exact.upper) * perMl,
    animalsCounted,
    replicates: animals.length,
    dispersion,
    coefficientOfVariation: animalsCounted === 0 ? null : clumping / Math.sqrt(animalsCounted),
  }
}

/**
 * Animals to count for a wanted coefficient of variation, when they fall at random: CV = 1/sqrt(n), so 0.1 asks for
 * 100. Standard theory, from memory; real replicates vary more (Downing, Perusse & Frenette 1987, Limnol. Oceanogr.
 * 32:673-680).
 * @throws ArgumentError unless 0 < coefficientOfVariation <= 1.
 */
export function animalsToCount({ coefficientOfVariation }: { coefficientOfVariation: number }): number {
  if (!(coefficientOfVariation > 0 && coefficientOfVariation <= 1)) {
    throw new ArgumentError({
      argument: 'coefficientOfVariation',
      value: coefficientOfVariation,
      allowed: 'a share above 0 up to 1',
    })
  }
  // Rounded first, so that 1 / 0.1^2 asks for 100 and not 101.
  return Math.ceil(Number((1 / coefficientOfVariation ** 2).toPrecision(12)))
}
