import type { CultureObservation, CultureRemoval } from '../culture-history.ts'
import type { RotiferStrain } from '../growth-prior.ts'
import { type Random, seededRandom } from '../random.ts'

/**
 * Invented cultures for judging advice by: a truth that is not the filter's model. Crowding bends (theta-logistic), the
 * water warms and cools, spells and days differ, the keeper counts every day or second day, mixes and pipettes with an
 * error, and now and then writes down the wrong dilution.
 */
export type KeptCulture = {
  seed: number
  strain: RotiferStrain
  salinity: 22 | 33
  temperatureC: number
  growthPerDay: number
  capacityPerMl: number
  /** Shape of crowding: 1 is logistic, above it crowding bites late. */
  theta: number
  handlingSd: number
  dailySd: number
  spellSdPerDay: number
  /** The thermometer's swing round its usual, C, and its length. */
  swingC: number
  swingDays: number
  startPerMl: number
  /** Per day, drawn beforehand so that every way of harvesting meets the same luck. */
  days: { shock: number; handling: number; isCounted: boolean; misread: number; pipette: number }[]
}

export const KEPT = { days: 42, volumeL: 18, firstAgeDays: 3, firstPerMl: 150 } as const

const STEPS_PER_DAY = 12
/** Growth per degree, from the life table between 20 and 25 C: ln(0.977 / 0.672) / 5. */
const GROWTH_PER_DEGREE = 0.075
/** Animals under the counting plate that a keeper aims for before diluting. */
const COUNTED_AT_ONCE = 300
const MISREAD_ONE_IN = 60

const between = (random: Random, low: number, high: number) => low + (high - low) * random.uniform()

export function keptCulture(seed: number): KeptCulture {
  const random = seededRandom(seed)
  const pick = <T>(...choices: T[]): T => choices[Math.floor(random.uniform() * choices.length)] as T
  const countEvery = pick(1, 1.5, 2)
  let sinceCount = 0
  const reversion = 0.4
  const culture = {
    seed,
    strain: pick<RotiferStrain>('L', 'L', 'S'),
    salinity: pick<22 | 33>(22, 33),
    temperatureC: between(random, 23, 27),
    growthPerDay: between(random, 0.2, 0.8),
    capacityPerMl: between(random, 350, 1000),
    theta: between(random, 0.7, 1.6),
    handlingSd: between(random, 0.08, 0.2),
    dailySd: between(random, 0.03, 0.1),
    spellSdPerDay: between(random, 0.02, 0.1),
    swingC: between(random, 0, 1.5),
    swingDays: between(random, 7, 21),
    startPerMl: between(random, 50, 150),
  }
  let spell = 0
  const days = Array.from({ length: KEPT.days }, (_, day) => {
    spell += -reversion * spell + culture.spellSdPerDay * Math.sqrt(2 * reversion) * random.normal()
    const warm = culture.swingC * Math.sin((2 * Math.PI * day) / culture.swingDays)
    sinceCount += 1
    const isCounted = day === 0 || sinceCount >= countEvery || (countEvery === 1.5 && random.uniform() < 0.5)
    if (isCounted) sinceCount = 0
    return {
      shock: spell + culture.dailySd * random.normal() + GROWTH_PER_DEGREE * warm * culture.growthPerDay,
      handling: Math.exp(culture.handlingSd * random.normal()),
      isCounted,
      misread: random.uniform() < 1 / MISREAD_ONE_IN ? pick(0.5, 2) : 1,
      pipette: Math.floor(random.uniform() * 0xffffffff),
    }
  })
  return { ...culture, days }
}

/** Density a day later: small steps of theta-logistic growth with the day's own luck. */
export function grow(culture: KeptCulture, densityPerMl: number, shock: number): number {
  let density = densityPerMl
  for (let step = 0; step < STEPS_PER_DAY; step += 1) {
    const crowded = (density / culture.capacityPerMl) ** culture.theta
    density *= Math.exp((culture.growthPerDay * (1 - crowded) + shock) / STEPS_PER_DAY)
  }
  return density
}

/** Poisson by a normal of its root, near enough from some ten animals up; never below 0. */
const poisson = (mean: number, random: Random) => Math.max(0, Math.round((Math.sqrt(mean) + random.normal() / 2) ** 2))

function count(culture: KeptCulture, densityPerMl: number, day: number): CultureObservation {
  const { handling, misread, pipette } = culture.days[day]!
  const dilution = Math.max(1, Math.ceil(densityPerMl / COUNTED_AT_ONCE))
  const animalsCounted = poisson((densityPerMl * handling) / dilution, seededRandom(pipette))
  return { day, densityPerMl: animalsCounted * dilution * misread, animalsCounted }
}

export type Kept = {
  /** Million animals. */
  harvested: number
  /** Share of the volume taken on each day from the first on which the culture was old and dense enough. */
  shares: number[]
  /** Density left after each of these. */
  leftPerMl: number[]
}
/** Says on each day, after its count, what share to take. */
export type Keeper = (seen: { day: number; observations: CultureObservation[]; removals: CultureRemoval[] }) => number

/** Forty-two days of a culture under a keeper who harvests the share that is said. */
export function keep(culture: KeptCulture, keeper: Keeper): Kept {
  const observations: CultureObservation[] = []
  const removals: CultureRemoval[] = []
  const kept: Kept = { harvested: 0, shares: [], leftPerMl: [] }
  let density = culture.startPerMl
  let isRipe = false
  for (const [day, { shock, isCounted }] of culture.days.entries()) {
    if (isCounted) observations.push(count(culture, density, day))
    isRipe ||= day >= KEPT.firstAgeDays && density >= KEPT.firstPerMl
    const share = keeper({ day, observations, removals })
    if (share > 0) removals.push({ day, fraction: share })
    kept.harvested += (share * density * KEPT.volumeL) / 1000
    density *= 1 - share
    if (isRipe) {
      kept.shares.push(share)
      kept.leftPerMl.push(density)
    }
    density = grow(culture, density, shock)
  }
  return kept
}

/** The best that one share a day would have given, known only afterwards; it starts on the same day as anybody may. */
export function bestConstant(culture: KeptCulture): { share: number; harvested: number } {
  let best = { share: 0, harvested: 0 }
  for (let percent = 1; percent <= 50; percent += 1) {
    const share = percent / 100
    let density = culture.startPerMl
    let harvested = 0
    let isRipe = false
    for (const [day, { shock }] of culture.days.entries()) {
      isRipe ||= day >= KEPT.firstAgeDays && density >= KEPT.firstPerMl
      const taken = isRipe ? share : 0
      harvested += (taken * density * KEPT.volumeL) / 1000
      density = grow(culture, density * (1 - taken), shock)
    }
    if (harvested > best.harvested) best = { share, harvested }
  }
  return best
}
