import { assertInRange, assertPositive, assertWholeNumber } from './check-input.ts'

/** Nannochloropsis concentrate, trials of 25,000-150,000: Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243. */
export const DEFAULT_CELLS_PER_ROTIFER_PER_DAY = 75_000
const TRIED_CELLS = { min: 25_000, max: 150_000 }

/** Two or more feeds a day; common practice. */
const DEFAULT_FEEDS_PER_DAY = 2

/** How far what is seen may move the ration, and by how much at a time; common practice. */
export const ADJUSTMENT_LIMITS = { lowest: 0.5, highest: 1.5, lessAfterGreen: 0.8, moreAfterClear: 1.2 } as const

export type RationInput = {
  rotifersPerMl: number
  volumeL: number
  cellsPerRotiferPerDay?: number
  /** Read from the label of the bottle: there is no default. */
  concentrateCellsPerMl: number
  /** Whole number from 1; 2 unless given. */
  feedsPerDay?: number
  /** Factor from `rationAdjustment`, 0.5 to 1.5; 1 unless given. */
  adjustment?: number
}

export type Ration = {
  mlPerDay: number
  mlPerFeed: number
  cellsPerDay: number
  /** True when cells per rotifer, adjustment included, leaves the 25,000-150,000 a day that were tried in print. */
  isOutsideTrials: boolean
}

/**
 * Microalgae concentrate for a culture: rotifers * cells per rotifer per day / cells per mL, mL a day and per feed.
 * Default 75,000 cells per rotifer per day (Pfeiffer & Ludwig 2007). A missed feed is never made up by doubling: the
 * next one is `mlPerFeed` again (common practice).
 * @throws ArgumentError when a density, volume, ration or strength cannot be one, or adjustment leaves 0.5 to 1.5.
 */
export function concentrateRation({
  rotifersPerMl,
  volumeL,
  cellsPerRotiferPerDay = DEFAULT_CELLS_PER_ROTIFER_PER_DAY,
  concentrateCellsPerMl,
  feedsPerDay = DEFAULT_FEEDS_PER_DAY,
  adjustment = 1,
}: RationInput): Ration {
  assertInRange('rotifersPerMl', rotifersPerMl, { min: 0, unit: 'per mL' })
  assertPositive('volumeL', volumeL, 'L')
  assertPositive('cellsPerRotiferPerDay', cellsPerRotiferPerDay, 'cells')
  assertPositive('concentrateCellsPerMl', concentrateCellsPerMl, 'cells per mL')
  assertWholeNumber('feedsPerDay', feedsPerDay, { min: 1, max: 48 })
  assertInRange('adjustment', adjustment, { min: ADJUSTMENT_LIMITS.lowest, max: ADJUSTMENT_LIMITS.highest })
  const cellsEach = cellsPerRotiferPerDay * adjustment
  const cellsPerDay = rotifersPerMl * volumeL * 1000 * cellsEach
  const mlPerDay = cellsPerDay / concentrateCellsPerMl
  return {
    mlPerDay,
    mlPerFeed: mlPerDay / feedsPerDay,
    cellsPerDay,
    isOutsideTrials: cellsEach < TRIED_CELLS.min || cellsEach > TRIED_CELLS.max,
  }
}

/**
 * The other way round: the density, per mL, that a daily amount of concentrate feeds at the given ration.
 * @throws ArgumentError as for `concentrateRation`.
 */
export function densityFedByConcentrate({
  mlPerDay,
  volumeL,
  cellsPerRotiferPerDay = DEFAULT_CELLS_PER_ROTIFER_PER_DAY,
  concentrateCellsPerMl,
}: {
  mlPerDay: number
  volumeL: number
  cellsPerRotiferPerDay?: number
  concentrateCellsPerMl: number
}): number {
  assertInRange('mlPerDay', mlPerDay, { min: 0, unit: 'mL' })
  assertPositive('volumeL', volumeL, 'L')
  assertPositive('cellsPerRotiferPerDay', cellsPerRotiferPerDay, 'cells')
  assertPositive('concentrateCellsPerMl', concentrateCellsPerMl, 'cells per mL')
  return (mlPerDay * concentrateCellsPerMl) / (volumeL * 1000 * cellsPerRotiferPerDay)
}

export type RationAdjustment = {
  factor: number
  reason: 'still-green' | 'tinted' | 'clear-and-sound' | 'clear-but-unsound'
  /** True when the step wanted to go past 0.5 or 1.5. */
  isAtLimit: boolean
  source: 'common practice'
}

/**
 * How the ration follows what the caretaker sees at the next feed, as a factor on `concentrateRation`: still green
 * gives less, tinted keeps, clear gives more only when count, swimming and smell are sound, because a dying culture
 * clears too. Steps of a fifth between 0.5 and 1.5; common practice.
 * @throws ArgumentError when previous is outside 0.5 to 1.5.
 */
export function rationAdjustment({
  waterAtNextFeed,
  isCultureSound,
  previous = 1,
}: {
  waterAtNextFeed: 'green' | 'tinted' | 'clear'
  isCultureSound: boolean
  previous?: number
}): RationAdjustment {
  const { lowest, highest, lessAfterGreen, moreAfterClear } = ADJUSTMENT_LIMITS
  assertInRange('previous', previous, { min: lowest, max: highest })
  const step = (multiplier: number, reason: RationAdjustment['reason']): RationAdjustment => {
    const wanted = previous * multiplier
    const factor = Math.min(highest, Math.max(lowest, wanted))
    return { factor, reason, isAtLimit: factor !== wanted, source: 'common practice' }
  }
  switch (waterAtNextFeed) {
    case 'green':
      return step(lessAfterGreen, 'still-green')
    case 'tinted':
      return step(1, 'tinted')
    case 'clear':
      return isCultureSound ? step(moreAfterClear, 'clear-and-sound') : step(1, 'clear-but-unsound')
  }
}
