import { assertInRange, assertPositive, assertShare } from './check-input.ts'

/** About a tenth is lost per sieving: Attramadal & Sandvand, rotifer cultivating method (Fish Farming Technology, Balkema). */
export const DEFAULT_SIEVING_LOSS = 0.1

/**
 * Rotifers eaten per larva per day, marine larvae in general, at most: Treece & Davis 2000, SRAC Publication 701.
 * An upper bound only: no published figure per clownfish larva was found.
 */
export const MOST_EATEN_PER_LARVA_PER_DAY = 1900

export type PreyTopUpInput = {
  /** Prey density to keep, per mL. */
  targetPerMl: number
  /** Counted before feeding, per mL. */
  residualPerMl: number
  volumeL: number
  larvae?: number
  /** The room's own figure from `learnGrazing`; left out, expected grazing is 0 and said to be unknown. */
  eatenPerLarvaPerHour?: number
  hoursUntilNextFeed: number
  /** Share of the water changed in one go between the count and this feed: it takes residual prey with it. */
  waterExchangedFraction?: number
  /** Continuous exchange until the next feed, tank volumes a day: it flushes out what is added. */
  dilutionPerDay?: number
  /** Density of the culture that feeds the tank, per mL; needed for `cultureMl`. */
  densityOfCulturePerMl?: number
  /** Share lost when the harvest is sieved and rinsed; 0.1 unless given. */
  sievingLoss?: number
}

export type PreyTopUp = {
  animalsToAdd: number
  /** Culture to sieve for it, mL, sieving loss included; null without a culture density. */
  cultureMl: number | null
  /** What the target alone asks for, before grazing and flushing. */
  animalsForTarget: number
  expectedGrazing: number
  expectedFlushing: number
  grazing: 'learned' | 'unknown'
  /** Just after the feed, per mL. */
  densityAfterPerMl: number
}

/**
 * Prey to add to a larval tank: (target - residual) * volume + what will be eaten and flushed out until the next feed,
 * never below 0. The residual is the caretaker's count, less what a water change since then took away.
 * @throws ArgumentError naming the argument when a density, volume, count or share cannot be one.
 */
export function preyTopUp(input: PreyTopUpInput): PreyTopUp {
  const { targetPerMl, residualPerMl, volumeL, larvae = 0, eatenPerLarvaPerHour, hoursUntilNextFeed } = input
  const { waterExchangedFraction = 0, dilutionPerDay = 0, densityOfCulturePerMl } = input
  const { sievingLoss = DEFAULT_SIEVING_LOSS } = input
  assertInRange('targetPerMl', targetPerMl, { min: 0, unit: 'per mL' })
  assertInRange('residualPerMl', residualPerMl, { min: 0, unit: 'per mL' })
  assertPositive('volumeL', volumeL, 'L')
  assertInRange('larvae', larvae, { min: 0, unit: 'larvae' })
  assertInRange('eatenPerLarvaPerHour', eatenPerLarvaPerHour ?? 0, { min: 0 })
  assertInRange('hoursUntilNextFeed', hoursUntilNextFeed, { min: 0, max: 48, unit: 'hours' })
  assertInRange('waterExchangedFraction', waterExchangedFraction, { min: 0, max: 1 })
  assertInRange('dilutionPerDay', dilutionPerDay, { min: 0, unit: 'tank volumes a day' })
  if (densityOfCulturePerMl !== undefined) assertPositive('densityOfCulturePerMl', densityOfCulturePerMl, 'per mL')
  assertShare('sievingLoss', sievingLoss)

  const volumeMl = volumeL * 1000
  const left = residualPerMl * (1 - waterExchangedFraction)
  const animalsForTarget = Math.max(0, (targetPerMl - left) * volumeMl)
  const expectedGrazing = larvae * (eatenPerLarvaPerHour ?? 0) * hoursUntilNextFeed
  // Kept at the target on average, so that is what flows out.
  const expectedFlushing = targetPerMl * volumeMl * (1 - Math.exp((-dilutionPerDay * hoursUntilNextFeed) / 24))
  const animalsToAdd = Math.max(0, (targetPerMl - left) * volumeMl + expectedGrazing + expectedFlushing)
  return {
    animalsToAdd,
    cultureMl: densityOfCulturePerMl === undefined ? null : animalsToAdd / (densityOfCulturePerMl * (1 - sievingLoss)),
    animalsForTarget,
    expectedGrazing,
    expectedFlushing,
    grazing: eatenPerLarvaPerHour === undefined ? 'unknown' : 'learned',
    densityAfterPerMl: left + animalsToAdd / volumeMl,
  }
}
