import { assertInRange, assertPositive, assertShare } from './check-input.ts'
import type { CultureEstimate } from './culture-estimate.ts'
import { type SteadyHarvest, steadyHarvest } from './steady-harvest.ts'

/** All common practice: at least 3 days old, about 150 per mL and rising, about a fifth a day, never more than half. */
export const HARVEST_PRACTICE = {
  firstHarvestAgeDays: 3,
  firstHarvestPerMl: 150,
  /** The most while the culture's own counts are fewer than `countsToKnow`. */
  usualFraction: 0.2,
  maximumFraction: 0.5,
  /** A jug or nothing: less is not worth the sieve. */
  smallestFraction: 0.05,
  countsToKnow: 4,
} as const

/** Growth under which a culture counts as falling, per day; common practice, about the error of good counts. */
const FALLING_PER_DAY = -0.05

/**
 * How firmly one day's density is answered: 1 leaves the same number behind whatever is seen, 0 takes the same share. In
 * between, a miscount moves the jug less than itself. Chosen on simulated cultures (README), seeds 1-60.
 */
const ANSWER = 0.6
/** Thinner than this share of the density worth holding, nothing is taken; above it at least a jug. Chosen likewise. */
const THIN_SHARE = 0.7

export type HarvestAdviceInput = {
  estimate: CultureEstimate
  /** Of the rates weighed against each other; the same seed gives the same advice. */
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
  /** What can go every day for weeks, the density staying where it gives most. */
  sustainableShare: number
  /** That density, per mL, just after a harvest. */
  heldPerMl: number
  /** What would be left just after the harvest, per mL. */
  densityAfterPerMl: number
}

/**
 * Share of a culture that may go without its being left under a floor, per mL: by the lower end of the 80 % interval of
 * its estimate, so that nine in ten miscounts do not take it there. From 0 to 1.
 */
export function shareAboveFloor(input: {
  estimate: Pick<CultureEstimate, 'densityPerMl' | 'lower80PerMl'>
  /** Today's own count where it differs from the estimate; as doubtful as that. */
  densityPerMl: number
  floorPerMl: number
}): number {
  const { estimate, densityPerMl, floorPerMl } = input
  if (densityPerMl <= 0) return 0
  const surelyPerMl = densityPerMl * (estimate.lower80PerMl / estimate.densityPerMl)
  return Math.max(0, 1 - floorPerMl / surelyPerMl)
}

type Bounds = { share: number; boundedBy: HarvestBound }

function smallest(bounds: readonly Bounds[]): Bounds {
  return bounds.reduce((least, bound) => (bound.share < least.share ? bound : least))
}

/** Growth per day that would show once the culture is as thin as is worth holding: crowding alone is no fall. */
function growthWhenHeld(estimate: CultureEstimate, densityPerMl: number, heldPerMl: number): number {
  const { growthPerDay, capacityPerMl } = estimate.parameters
  return estimate.growthPerDay + (growthPerDay * Math.max(0, densityPerMl - heldPerMl)) / capacityPerMl
}

function refusal(input: HarvestAdviceInput, densityPerMl: number, heldPerMl: number) {
  const { firstHarvestAgeDays = HARVEST_PRACTICE.firstHarvestAgeDays, isFirstHarvest = false } = input
  const { firstHarvestPerMl = HARVEST_PRACTICE.firstHarvestPerMl, floorPerMl = 0, ageDays, estimate } = input
  if (ageDays < firstHarvestAgeDays) return { reason: 'too-young', boundedBy: 'age' } as const
  if (densityPerMl <= floorPerMl) return { reason: 'too-thin', boundedBy: 'floor' } as const
  if (isFirstHarvest && densityPerMl < firstHarvestPerMl) return { reason: 'too-thin', boundedBy: 'density' } as const
  const growth = growthWhenHeld(estimate, densityPerMl, heldPerMl)
  // At capacity a culture grows by 0 and noise takes it below: that is full, not falling.
  if (densityPerMl >= 0.9 * estimate.parameters.capacityPerMl) return null
  if (growth < FALLING_PER_DAY) return { reason: 'falling', boundedBy: 'trend' } as const
  if (isFirstHarvest && growth <= 0) return { reason: 'not-rising', boundedBy: 'trend' } as const
  return null
}

/** Takes what brings a dense culture down and lets a thin one up to the density worth holding, some of the way a day. */
function shareForWeeks({ heldPerMl, regrownPerMl }: SteadyHarvest, densityPerMl: number): number {
  return 1 - (heldPerMl / regrownPerMl) * (regrownPerMl / densityPerMl) ** ANSWER
}

function boundsOf(input: HarvestAdviceInput, steady: SteadyHarvest, densityPerMl: number): Bounds {
  const { usualFraction = HARVEST_PRACTICE.usualFraction, maximumFraction = HARVEST_PRACTICE.maximumFraction } = input
  const isKnown = input.estimate.parameters.observations >= HARVEST_PRACTICE.countsToKnow
  const jug = HARVEST_PRACTICE.smallestFraction
  return smallest([
    { share: Math.max(jug, shareForWeeks(steady, densityPerMl)), boundedBy: 'sustainable' },
    { share: maximumFraction, boundedBy: 'maximum' },
    { share: isKnown ? 1 : usualFraction, boundedBy: 'usual' },
    {
      share: shareAboveFloor({ estimate: input.estimate, densityPerMl, floorPerMl: input.floorPerMl ?? 0 }),
      boundedBy: 'floor',
    },
  ])
}

/**
 * How much of a culture to harvest today so that it gives most over weeks (`steadyHarvest`): never more than half,
 * nothing from a young, thin or falling one, a jug or nothing (common practice), and not below its floor.
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
  const steady = steadyHarvest(estimate.parameters, { dilutionPerDay: estimate.dilutionPerDay, seed })
  const { heldPerMl, shareOfVolume: sustainableShare } = steady
  const nothing = { shareOfVolume: 0, litres: 0, sustainableShare, heldPerMl, densityAfterPerMl: densityPerMl }
  const refused = refusal(input, densityPerMl, heldPerMl)
  if (refused !== null) return { ...nothing, ...refused }
  if (densityPerMl < THIN_SHARE * heldPerMl) return { ...nothing, reason: 'too-thin', boundedBy: 'density' }
  const { share, boundedBy } = boundsOf(input, steady, densityPerMl)
  const isJug = share >= Math.min(HARVEST_PRACTICE.smallestFraction, usualFraction, maximumFraction)
  if (!isJug) return { ...nothing, reason: 'held-back', boundedBy }
  return {
    shareOfVolume: share,
    litres: share * volumeL,
    reason: boundedBy === 'floor' ? 'held-back' : 'ready',
    boundedBy,
    sustainableShare,
    heldPerMl,
    densityAfterPerMl: densityPerMl * (1 - share),
  }
}
