import { ArgumentError, type Interval, poissonInterval, wilsonInterval } from '@fryward/survival'
import { assertInRange, assertLength, assertPositive, assertWholeNumber } from './check-input.ts'

/**
 * Standard test: 1.6 g of cysts in 80 mL at 33, 28 C and 2000 lux, 250-uL samples at 24 and 48 h.
 * FAO Fish. Tech. Pap. 361, sect. 4.2 worksheet (Lavens & Sorgeloos 1996); from memory.
 */
export const HATCHING_TEST = { cystsG: 1.6, volumeMl: 80, sampleMl: 0.25 } as const

export type HatchingSample = {
  nauplii: number
  /** Umbrella stage: out of the shell, still in the membrane. */
  umbrella: number
  /** Unhatched embryos, seen once the shells are cleared with hypochlorite. */
  embryos: number
}

export type HatchingTest = {
  /** Nauplii per 100 full cysts. */
  hatchingPercent: number
  hatchingPercentInterval: Interval
  /** Hatching efficiency, what `artemiaHatchPlan` takes. */
  naupliiPerGram: number
  naupliiPerGramInterval: Interval
  samples: number
}

/**
 * Hatching percentage 100 N / (N + U + E) (Wilson interval) and efficiency in nauplii per gram (Garwood interval) of a
 * lot, from three samples or more. At the standard sizes the efficiency is 200 N for a mean of N per sample.
 * @throws ArgumentError with fewer than 3 samples, counts that are not whole, or no cyst seen at all.
 */
export function hatchingTest({
  samples,
  cystsG = HATCHING_TEST.cystsG,
  volumeMl = HATCHING_TEST.volumeMl,
  sampleMl = HATCHING_TEST.sampleMl,
}: {
  samples: readonly HatchingSample[]
  cystsG?: number
  volumeMl?: number
  sampleMl?: number
}): HatchingTest {
  assertLength('samples', samples, 3)
  assertPositive('cystsG', cystsG, 'g')
  assertPositive('volumeMl', volumeMl, 'mL')
  assertPositive('sampleMl', sampleMl, 'mL')
  let nauplii = 0
  let trials = 0
  for (const [index, sample] of samples.entries()) {
    assertWholeNumber(`samples[${index}].nauplii`, sample.nauplii)
    assertWholeNumber(`samples[${index}].umbrella`, sample.umbrella)
    assertWholeNumber(`samples[${index}].embryos`, sample.embryos)
    nauplii += sample.nauplii
    trials += sample.nauplii + sample.umbrella + sample.embryos
  }
  if (trials === 0)
    throw new ArgumentError({ argument: 'samples', value: 'all zero', allowed: 'at least one cyst seen' })
  const perGram = volumeMl / (sampleMl * samples.length * cystsG)
  const share = wilsonInterval({ successes: nauplii, trials })
  const count = poissonInterval({ count: nauplii })
  return {
    hatchingPercent: (100 * nauplii) / trials,
    hatchingPercentInterval: { lower: 100 * share.lower, upper: 100 * share.upper },
    naupliiPerGram: nauplii * perGram,
    naupliiPerGramInterval: { lower: count.lower * perGram, upper: count.upper * perGram },
    samples: samples.length,
  }
}

/** A hazard that has to be shown wherever the quantities are. */
export type DecapsulationCaution =
  | 'never-mix-hypochlorite-with-acid-or-ammonia'
  | 'caustic-soda-into-water-never-the-reverse'
  | 'goggles-and-gloves'
  | 'ventilate'
  | 'heats-up-keep-under-40-c'
  | 'neutralise-until-no-chlorine-is-left'

/** FAO Fish. Tech. Pap. 361, sect. 4.2.3 and general chemical safety; from memory. */
const CAUTIONS: readonly DecapsulationCaution[] = [
  'never-mix-hypochlorite-with-acid-or-ammonia',
  'caustic-soda-into-water-never-the-reverse',
  'goggles-and-gloves',
  'ventilate',
  'heats-up-keep-under-40-c',
  'neutralise-until-no-chlorine-is-left',
]

/**
 * For 500 g of cysts 4.77 L of 5.25 % hypochlorite, 75 g of caustic soda and 2.2 L of water: Larviculture & Artemia
 * Newsletter (Ghent Univ.) no. 43, 1997. That is 0.5 g active chlorine, 0.15 g NaOH and 14 mL in all per g of cysts.
 */
const RECIPE = { cystsG: 500, bleachL: 4.77, bleachPercent: 5.25, causticSodaG: 75, waterL: 2.2 }

export type Decapsulation = {
  bleachMl: number
  causticSodaG: number
  waterMl: number
  totalMl: number
  activeChlorineG: number
  hydrateMinutes: { from: number; to: number }
  reactMinutes: { from: number; to: number }
  /** Stop at once above it. */
  highestTemperatureC: number
  thiosulphatePercent: number
  cautions: readonly DecapsulationCaution[]
  source: string
}

/**
 * Quantities to take the shells off Artemia cysts, scaled from the published recipe to the bleach at hand: the active
 * chlorine per gram and the total volume stay as printed, water makes up the rest. Never shown without its cautions.
 * @throws ArgumentError when cystsG is not above 0 or above 500 g, or bleachPercent is outside 4 to 15 %.
 */
export function decapsulation({
  cystsG,
  bleachPercent = 5.25,
}: {
  cystsG: number
  bleachPercent?: number
}): Decapsulation {
  assertPositive('cystsG', cystsG, 'g')
  // Larger lots heat up faster than a small room can cool them.
  assertInRange('cystsG', cystsG, { max: RECIPE.cystsG, unit: 'g' })
  // Below 4 % the bleach alone would be more than the whole volume asked for.
  assertInRange('bleachPercent', bleachPercent, { min: 4, max: 15, unit: '% NaOCl' })
  const scale = cystsG / RECIPE.cystsG
  const bleachMl = (RECIPE.bleachL * 1000 * scale * RECIPE.bleachPercent) / bleachPercent
  const totalMl = (RECIPE.bleachL + RECIPE.waterL) * 1000 * scale
  return {
    bleachMl,
    causticSodaG: RECIPE.causticSodaG * scale,
    waterMl: totalMl - bleachMl,
    totalMl,
    activeChlorineG: (bleachMl * bleachPercent) / 100,
    hydrateMinutes: { from: 30, to: 60 },
    reactMinutes: { from: 2, to: 4 },
    highestTemperatureC: 40,
    thiosulphatePercent: 0.1,
    cautions: CAUTIONS,
    source: 'Larviculture & Artemia Newsletter (Ghent Univ.) no. 43, 1997; cautions: FAO 361, sect. 4.2.3, from memory',
  }
}
