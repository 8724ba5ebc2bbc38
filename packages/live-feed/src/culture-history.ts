import { ArgumentError } from '@fryward/survival'
import { assertInRange, assertLength, assertPositive, assertShare } from './check-input.ts'
import type { RotiferStrain } from './growth-prior.ts'

export type CultureObservation = {
  /** Days on any one axis, fractions allowed; strictly later than the observation before. */
  day: number
  densityPerMl: number
  /** Animals behind the density, for its error; left out, the handling error alone stands for it. */
  animalsCounted?: number
  /** Eggs per female. */
  eggRatio?: number
}

/** A harvest or water change: the share of the culture that left at `day`. On the day of a count, it came after it. */
export type CultureRemoval = { day: number; fraction: number }

/** Animals put in: by how much that raised the density. On the day of a count, it came after it. */
export type CultureAddition = { day: number; addedPerMl: number }

export type CultureHistory = {
  observations: readonly CultureObservation[]
  /** Harvests and water changes; those before the first observation change nothing. */
  removals?: readonly CultureRemoval[]
  additions?: readonly CultureAddition[]
  /** Continuous exchange, vessel volumes a day; 0 unless given. */
  dilutionPerDay?: number
  /** Size strain: with temperature and salinity it says what to expect before the counts do. */
  strain?: RotiferStrain
  temperatureC?: number
  salinity?: number
  /** The most the vessel has held, when the room knows it: steadies the fit. */
  capacityPerMl?: number
}

/** A culture not counted for longer than a year is another culture. */
const LONGEST_GAP_DAYS = 366

/** A count of nothing is taken as half an animal in one mL (common practice): a logarithm needs a number. */
const NOTHING_SEEN_PER_ML = 0.5
const NOTHING_SEEN_LOG_VARIANCE = 1 / 0.5

export type LogObservation = {
  day: number
  densityPerMl: number
  logDensity: number
  /** Variance of the logarithm from counting alone, handling left out. */
  countVariance: number
  /** ln(1 + eggs per female); null when eggs were not counted. */
  logEggs: number | null
}

export type CultureEvent = { day: number; keepShare: number; addedPerMl: number }

function toLogObservation(observation: CultureObservation, index: number): LogObservation {
  const at = (name: string) => `observations[${index}].${name}`
  const { day, densityPerMl, animalsCounted, eggRatio } = observation
  assertInRange(at('day'), day)
  assertInRange(at('densityPerMl'), densityPerMl, { min: 0, unit: 'per mL' })
  if (animalsCounted !== undefined) assertInRange(at('animalsCounted'), animalsCounted, { min: 0, unit: 'animals' })
  if (eggRatio !== undefined) assertInRange(at('eggRatio'), eggRatio, { min: 0, unit: 'eggs per female' })
  const isNothing = densityPerMl === 0
  const counted = animalsCounted === undefined || animalsCounted === 0 ? 0 : 1 / animalsCounted
  return {
    day,
    densityPerMl,
    logDensity: Math.log(isNothing ? NOTHING_SEEN_PER_ML : densityPerMl),
    countVariance: isNothing ? NOTHING_SEEN_LOG_VARIANCE : counted,
    logEggs: eggRatio === undefined || isNothing ? null : Math.log1p(eggRatio),
  }
}

/**
 * Observations as the filter wants them.
 * @throws ArgumentError when there is none, one holds an impossible figure, or the days do not rise.
 */
export function toLogObservations(history: CultureHistory): LogObservation[] {
  assertLength('observations', history.observations)
  const observations = history.observations.map(toLogObservation)
  for (const [index, observation] of observations.entries()) {
    const before = observations[index - 1]
    if (before === undefined) continue
    if (observation.day > before.day && observation.day - before.day <= LONGEST_GAP_DAYS) continue
    throw new ArgumentError({
      argument: `observations[${index}].day`,
      value: observation.day,
      allowed: `later than the observation before it (${before.day}) by at most ${LONGEST_GAP_DAYS}`,
    })
  }
  return observations
}

/** Harvests, water changes and inoculations in order of time; on one day animals go in before they come out. */
export function toEvents({
  removals = [],
  additions = [],
}: {
  removals?: readonly CultureRemoval[]
  additions?: readonly CultureAddition[]
}): CultureEvent[] {
  const ins = additions.map(({ day, addedPerMl }, index) => {
    assertInRange(`additions[${index}].day`, day)
    assertInRange(`additions[${index}].addedPerMl`, addedPerMl, { min: 0, unit: 'per mL' })
    return { day, keepShare: 1, addedPerMl }
  })
  const outs = removals.map(({ day, fraction }, index) => {
    assertInRange(`removals[${index}].day`, day)
    assertShare(`removals[${index}].fraction`, fraction)
    return { day, keepShare: 1 - fraction, addedPerMl: 0 }
  })
  return [...ins, ...outs].sort((a, b) => a.day - b.day)
}

/** Checks what holds for the whole history and fills its defaults. */
export function toConditions(history: CultureHistory): { dilutionPerDay: number } {
  const { dilutionPerDay = 0, temperatureC, salinity, capacityPerMl } = history
  assertInRange('dilutionPerDay', dilutionPerDay, { min: 0, max: 20, unit: 'vessel volumes a day' })
  if (temperatureC !== undefined) assertInRange('temperatureC', temperatureC, { min: 5, max: 35, unit: 'C' })
  if (salinity !== undefined) assertInRange('salinity', salinity, { min: 0, max: 97 })
  if (capacityPerMl !== undefined) assertPositive('capacityPerMl', capacityPerMl, 'per mL')
  return { dilutionPerDay }
}
