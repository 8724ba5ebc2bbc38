import type { CultureEstimate } from './culture-estimate.ts'
import { eggAgeDays, stepNoise } from './culture-filter.ts'
import type { CultureRates } from './culture-parameters.ts'
import type { Random } from './random.ts'

/** One way that a culture may go from its estimate on. */
export type Course = {
  logDensity: number
  spell: number
  /** Deviation of ln(1 + eggs per female) from the culture's usual, and the day since the egg count it is drawn for. */
  eggs: number
  eggAgeDays: number
}

/** What a piece of at most a day does: logistic growth over it, and what is then added to log density unexplained. */
export type CoursePiece = { growth: number; crowding: number; days: number; toDensity: number }

/** Two normals with the given variances and covariance. */
function drawPair(random: Random, varX: number, covariance: number, varY: number): [number, number] {
  const first = random.normal()
  const second = random.normal()
  const sdX = Math.sqrt(Math.max(0, varX))
  const onX = sdX > 0 ? covariance / sdX : 0
  return [sdX * first, onX * first + Math.sqrt(Math.max(0, varY - onX * onX)) * second]
}

/** Where a culture may stand today, as drawn from its estimate. */
export function drawStart(estimate: CultureEstimate, random: Random): Course {
  const { varDensity, covariance, varSpell, logDensity, spell } = estimate.state
  const [dDensity, dSpell] = drawPair(random, varDensity, covariance, varSpell)
  const eggs = estimate.eggs === null ? 0 : estimate.eggs.logEggs - estimate.parameters.eggBaseline
  return { logDensity: logDensity + dDensity, spell: spell + dSpell, eggs, eggAgeDays: 0 }
}

/** Eggs of a day that has not been counted: today's deviation fades and a new one comes on top. */
function nextEggs(course: Course, estimate: CultureEstimate, day: number, random: Random): void {
  const { eggSd, eggCarryOver } = estimate.parameters
  const age = eggAgeDays(estimate.eggs ?? { day: estimate.day - 1, logEggs: 0 }, day)
  while (course.eggAgeDays < age) {
    course.eggAgeDays += 1
    course.eggs = eggCarryOver * course.eggs + eggSd * Math.sqrt(1 - eggCarryOver ** 2) * random.normal()
  }
}

/** Draws what a piece does, and moves eggs and spell on; the density is moved by whoever knows what was harvested. */
export function drawPiece(
  course: Course,
  { day, days }: { day: number; days: number },
  { rates, estimate, random }: { rates: CultureRates; estimate: CultureEstimate; random: Random },
): CoursePiece {
  nextEggs(course, estimate, day, random)
  const noise = stepNoise(rates, days)
  const usual = rates.growthPerDay - estimate.dilutionPerDay
  const growth = usual + rates.eggWeightPerDay * course.eggs + course.spell * noise.meanShare
  const [toDensity, toSpell] = drawPair(random, noise.varDensity, noise.covariance, noise.varSpell)
  course.spell = course.spell * noise.left + toSpell
  return { growth, crowding: rates.growthPerDay / rates.capacityPerMl, days, toDensity }
}
