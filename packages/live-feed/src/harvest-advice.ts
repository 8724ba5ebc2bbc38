import { assertInRange, assertPositive, assertShare } from './check-input.ts'
import type { CultureEstimate } from './culture-estimate.ts'
import { type CultureForecast, forecastCulture } from './culture-forecast.ts'

/** All common practice: at least 3 days old, about 150 per mL and rising, then a fifth a day, never more than half. */
export const HARVEST_PRACTICE = {
  firstHarvestAgeDays: 3,
  firstHarvestPerMl: 150,
  usualFraction: 0.2,
  maximumFraction: 0.5,
  /** Days the sustainable harvest is judged over: one day's luck is averaged out. */
  horizonDays: 3,
} as const

/** Median growth under which a culture counts as falling, per day; common practice, about the error of good counts. */
const FALLING_PER_DAY = -0.05

export type HarvestAdviceInput = {
  estimate: CultureEstimate
  /** A forecast under the usual harvest; left out, three days of it are drawn with `seed`. */
  forecast?: CultureForecast
  seed?: number
  volumeL: number
  ageDays: number
  /** Today's own count where it differs from the estimate; the estimate's unless given. */
  densityPerMl?: number
  /** True when nothing was harvested yet: the first harvest asks for more. False unless given. */
  isFirstHarvest?: boolean
  /** Density never to go under, per mL; 0 unless given. */
  floorPerMl?: number
  firstHarvestPerMl?: number
  firstHarvestAgeDays?: number
  usualFraction?: number
  maximumFraction?: number
}

export type HarvestReason = 'too-young' | 'too-thin' | 'falling' | 'not-rising' | 'held-back' | 'ready'
export type HarvestBound = 'age' | 'density' | 'trend' | 'sustainable' | 'floor' | 'usual' | 'maximum'

export type HarvestAdvice = {
  shareOfVolume: number
  litres: number
  reason: HarvestReason
  boundedBy: HarvestBound
  /** What the forecast's lower quantile would stand every day, before the usual share and the floor. */
  sustainableShare: number
  /** What would be left just after the harvest, per mL. */
  densityAfterPerMl: number
}

/**
 * Share that can go today and be regrown by tomorrow at the cautious growth: (1 - f) * exp(growth after f) is back at
 * the density held. That is 1 - exp(-growth) up to half the capacity, where a logistic culture yields most; above it
 * the surplus over half may go as well.
 */
function sustainable(growthPerDay: number, crowdingPerDay: number, heldShare: number): number {
  const isRegrown = (share: number) => (1 - share) * Math.exp(growthPerDay + crowdingPerDay * share) >= heldShare
  if (!isRegrown(0)) return 0
  let low = 0
  let high = 1
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2
    if (isRegrown(middle)) low = middle
    else high = middle
  }
  return low
}

type Bounds = { share: number; boundedBy: HarvestBound }

function smallest(bounds: readonly Bounds[]): Bounds {
  return bounds.reduce((least, bound) => (bound.share < least.share ? bound : least))
}

function refusal(input: HarvestAdviceInput, densityPerMl: number, forecast: CultureForecast) {
  const { firstHarvestAgeDays = HARVEST_PRACTICE.firstHarvestAgeDays, isFirstHarvest = false } = input
  const { firstHarvestPerMl = HARVEST_PRACTICE.firstHarvestPerMl, floorPerMl = 0, ageDays, estimate } = input
  if (ageDays < firstHarvestAgeDays) return { reason: 'too-young', boundedBy: 'age' } as const
  if (densityPerMl <= floorPerMl) return { reason: 'too-thin', boundedBy: 'floor' } as const
  if (isFirstHarvest && densityPerMl < firstHarvestPerMl) return { reason: 'too-thin', boundedBy: 'density' } as const
  // At capacity growth without harvest is 0 and noise takes it below: that is full, not falling.
  const isBelowCapacity = densityPerMl < 0.9 * estimate.parameters.capacityPerMl
  if (isBelowCapacity && forecast.growthPerDay.p50 < FALLING_PER_DAY) {
    return { reason: 'falling', boundedBy: 'trend' } as const
  }
  if (isFirstHarvest && isBelowCapacity && forecast.growthPerDay.p50 <= 0) {
    return { reason: 'not-rising', boundedBy: 'trend' } as const
  }
  return null
}

/**
 * How much of a culture to harvest today: about a fifth, never more than half, nothing from a young, thin or falling
 * one (common practice), and no more than it regrows by the forecast's lower decile of growth, nor below its floor.
 * @throws ArgumentError naming the argument when a volume, age, density or share cannot be one.
 */
export function harvestAdvice(input: HarvestAdviceInput): HarvestAdvice {
  const { estimate, volumeL, ageDays, floorPerMl = 0, seed = 1 } = input
  const { usualFraction = HARVEST_PRACTICE.usualFraction, maximumFraction = HARVEST_PRACTICE.maximumFraction } = input
  const densityPerMl = input.densityPerMl ?? estimate.densityPerMl
  assertPositive('volumeL', volumeL, 'L')
  assertInRange('ageDays', ageDays, { min: 0, unit: 'days' })
  assertInRange('densityPerMl', densityPerMl, { min: 0, unit: 'per mL' })
  assertInRange('floorPerMl', floorPerMl, { min: 0, unit: 'per mL' })
  assertShare('usualFraction', usualFraction)
  assertShare('maximumFraction', maximumFraction)
  // Under the usual harvest the density stays where it is, and so does the growth that is read off.
  const plan = { harvestFractionPerDay: usualFraction }
  const forecast = input.forecast ?? forecastCulture({ estimate, plan, days: HARVEST_PRACTICE.horizonDays, seed })
  const { capacityPerMl, growthPerDay } = estimate.parameters
  const held = densityPerMl > 0 ? Math.min(1, Math.max(capacityPerMl / 2, floorPerMl) / densityPerMl) : 1
  const crowdingPerDay = Math.min(1, densityPerMl / capacityPerMl) * growthPerDay
  const sustainableShare = sustainable(forecast.growthPerDay.p10, crowdingPerDay * (held < 1 ? 1 : 0), held)

  const refused = refusal(input, densityPerMl, forecast)
  if (refused !== null) {
    return { shareOfVolume: 0, litres: 0, ...refused, sustainableShare, densityAfterPerMl: densityPerMl }
  }
  const { share, boundedBy } = smallest([
    { share: usualFraction, boundedBy: 'usual' },
    { share: maximumFraction, boundedBy: 'maximum' },
    { share: sustainableShare, boundedBy: 'sustainable' },
    { share: 1 - floorPerMl / densityPerMl, boundedBy: 'floor' },
  ])
  return {
    shareOfVolume: share,
    litres: share * volumeL,
    reason: boundedBy === 'sustainable' || boundedBy === 'floor' ? 'held-back' : 'ready',
    boundedBy,
    sustainableShare,
    densityAfterPerMl: densityPerMl * (1 - share),
  }
}
