import { assertInRange, assertShare, assertWholeNumber } from './check-input.ts'
import { type Course, drawPiece, drawStart } from './culture-course.ts'
import type { CultureEstimate } from './culture-estimate.ts'
import { logisticStep, stepLengths } from './culture-filter.ts'
import { type CultureRemoval, toEvents } from './culture-history.ts'
import type { CultureRates } from './culture-parameters.ts'
import { type Random, seededRandom } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

/**
 * What will be taken out: a share each whole day from the first day ahead on, after that day's density is read; or
 * single harvests on the history's own day axis, those on the estimate's own day included; or both.
 */
export type HarvestPlan =
  | { harvestFractionPerDay?: number; removals?: readonly CultureRemoval[] }
  | readonly CultureRemoval[]

export type FutureInput = {
  estimate: CultureEstimate
  plan?: HarvestPlan
  /** Whole days ahead, 1 to 366. */
  days: number
  /** Whole number from 0 to 2^32 - 1: the same seed gives the same answer. */
  seed: number
  /** Futures drawn; 500 unless given. */
  futures?: number
  /** Chance per day that the culture dies out (see `crashHazard`); 0 unless given: then no future knows a crash. */
  crashHazardPerDay?: number
}

export type CultureFutures = {
  days: number[]
  /** densitiesPerMl[future][k]: density k + 1 days ahead, before that day's planned daily harvest. */
  densitiesPerMl: number[][]
  /** Mean growth per day over the days ahead, harvests added back; minus infinity where the culture crashed. */
  growthPerDay: number[]
}

const MOST_FUTURES = 20_000

function readPlan(plan: HarvestPlan): { daily: number; removals: readonly CultureRemoval[] } {
  if (isRemovals(plan)) return { daily: 0, removals: plan }
  const daily = plan.harvestFractionPerDay ?? 0
  assertShare('plan.harvestFractionPerDay', daily)
  return { daily, removals: plan.removals ?? [] }
}

function isRemovals(plan: HarvestPlan): plan is readonly CultureRemoval[] {
  return Array.isArray(plan)
}

/** Moves one future on by the pieces of a stretch, with its own noise. */
function grow(course: Course, rates: CultureRates, estimate: CultureEstimate, stretch: Stretch, random: Random): void {
  for (const piece of stretch.pieces) {
    const { growth, crowding, days, toDensity } = drawPiece(course, piece, { rates, estimate, random })
    course.logDensity = logisticStep(course.logDensity, growth, crowding, days).logDensity + toDensity
  }
  course.logDensity += stretch.logKept
}

type Stretch = {
  pieces: { day: number; days: number }[]
  /** ln of the share kept by the planned removal at the stretch's end; 0 without one. */
  logKept: number
  /** Read the density before the removal: this stretch ends on a whole day ahead. */
  readsDay: boolean
}

/** Cuts the days ahead at planned removals and at whole days. */
function layOut(
  estimate: CultureEstimate,
  days: number,
  plan: HarvestPlan,
): { stretches: Stretch[]; logKeptNow: number } {
  const { daily, removals } = readPlan(plan)
  const last = estimate.day + days
  const events = toEvents({ removals }).filter((event) => event.day >= estimate.day && event.day <= last)
  const logKeptOn = (from: number, to: number) =>
    events
      .filter((event) => event.day > from && event.day <= to)
      .reduce((sum, event) => sum + Math.log(event.keepShare), 0)
  const cuts = new Set<number>(Array.from({ length: days }, (_, k) => estimate.day + k + 1))
  const wholeDays = new Set(cuts)
  for (const event of events) cuts.add(event.day)
  let from = estimate.day
  const stretches = [...cuts]
    .sort((a, b) => a - b)
    .map((to) => {
      const readsDay = wholeDays.has(to)
      const pieces = stepLengths(from, to, estimate.eggs)
      const logKept = logKeptOn(from, to) + (readsDay ? Math.log1p(-daily) : 0)
      from = to
      return { pieces, logKept, readsDay }
    })
  return { stretches, logKeptNow: logKeptOn(Number.NEGATIVE_INFINITY, estimate.day) }
}

/**
 * Seeded futures of a culture under a harvest plan: state, rates and the noise of every day are drawn, so that the
 * spread holds what the history leaves open. A crash, when given a hazard, leaves 0 from that day on.
 * @throws ArgumentError when days, seed, futures, the hazard or a planned share cannot be one.
 */
export function cultureFutures(input: FutureInput): CultureFutures {
  const { estimate, plan = {}, days, seed, futures = 500, crashHazardPerDay = 0 } = input
  assertWholeNumber('days', days, { min: 1, max: 366 })
  assertWholeNumber('futures', futures, { min: 1, max: MOST_FUTURES })
  assertInRange('crashHazardPerDay', crashHazardPerDay, { min: 0, unit: 'per day' })
  const random = seededRandom(seed)
  const drawRates = rateDrawer(estimate.parameters, random)
  const { stretches, logKeptNow } = layOut(estimate, days, plan)
  const harvested = stretches.slice(0, -1).reduce((sum, stretch) => sum + stretch.logKept, 0)
  const densitiesPerMl: number[][] = []
  const growthPerDay: number[] = []
  for (let future = 0; future < futures; future += 1) {
    const course = drawStart(estimate, random)
    course.logDensity += logKeptNow
    const start = course.logDensity
    const rates = drawRates()
    const crashAfterDays = crashHazardPerDay > 0 ? -Math.log(random.uniform()) / crashHazardPerDay : Infinity
    let read = start
    const densities: number[] = []
    for (const stretch of stretches) {
      grow(course, rates, estimate, stretch, random)
      if (!stretch.readsDay) continue
      read = course.logDensity - stretch.logKept
      densities.push(densities.length + 1 >= crashAfterDays ? 0 : Math.exp(read))
    }
    densitiesPerMl.push(densities)
    growthPerDay.push(crashAfterDays <= days ? Number.NEGATIVE_INFINITY : (read - start - harvested) / days)
  }
  return { days: densitiesPerMl[0]!.map((_, k) => estimate.day + k + 1), densitiesPerMl, growthPerDay }
}

export type Quantiles = { p05: number; p10: number; p25: number; p50: number; p75: number; p90: number; p95: number }

/** Quantile of sorted values, straight between ranks (type 7 of Hyndman & Fan 1996, Am. Stat. 50:361-365). */
function quantileOf(sorted: Float64Array, share: number): number {
  const rank = (sorted.length - 1) * share
  const low = sorted[Math.floor(rank)]!
  const high = sorted[Math.ceil(rank)]!
  // Equal ends are returned as they are: two minus infinities have no difference.
  return low === high ? low : low + (high - low) * (rank - Math.floor(rank))
}

function quantilesOf(values: readonly number[]): Quantiles {
  const sorted = Float64Array.from(values).sort()
  return {
    p05: quantileOf(sorted, 0.05),
    p10: quantileOf(sorted, 0.1),
    p25: quantileOf(sorted, 0.25),
    p50: quantileOf(sorted, 0.5),
    p75: quantileOf(sorted, 0.75),
    p90: quantileOf(sorted, 0.9),
    p95: quantileOf(sorted, 0.95),
  }
}

export type CultureForecast = {
  /** True density per mL (no counting error), one entry per day ahead, before that day's planned daily harvest. */
  days: (Quantiles & { day: number })[]
  /** Mean net growth per day over the days ahead, harvests added back. */
  growthPerDay: Quantiles
  futures: number
}

/**
 * Quantiles of a culture's density for each day ahead under a harvest plan, from seeded futures (`cultureFutures`).
 * @throws ArgumentError as for `cultureFutures`.
 */
export function forecastCulture(input: FutureInput): CultureForecast {
  const { days, densitiesPerMl, growthPerDay } = cultureFutures(input)
  return {
    days: days.map((day, k) => ({ day, ...quantilesOf(densitiesPerMl.map((densities) => densities[k]!)) })),
    growthPerDay: quantilesOf(growthPerDay),
    futures: densitiesPerMl.length,
  }
}
