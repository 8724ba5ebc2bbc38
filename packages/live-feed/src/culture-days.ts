import { assertWholeNumber } from './check-input.ts'
import { type CoursePiece, drawPiece, drawStart } from './culture-course.ts'
import type { CultureEstimate } from './culture-estimate.ts'
import { eggEffect, stepLengths } from './culture-filter.ts'
import { seededRandom } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

/** What a day makes of the density left after a harvest: d becomes gain * d / (1 + crowding * d), whatever was taken. */
export type CultureDay = { gain: number; crowding: number }

/** A culture's density today and its days from here on, per mL, before anything is taken. */
export type CultureDays = { densityPerMl: number; days: CultureDay[] }

/** A logistic piece in closed form, with what is added after it. */
function dayOf({ growth, crowding, days, toDensity }: CoursePiece): CultureDay {
  const isFlat = Math.abs(growth * days) < 1e-9
  const mass = isFlat ? days : Math.expm1(growth * days) / growth
  return { gain: Math.exp(growth * days + toDensity), crowding: crowding * mass }
}

/** One piece after another is a day of the same shape. */
const after = (first: CultureDay, then: CultureDay): CultureDay => ({
  gain: first.gain * then.gain,
  crowding: first.crowding + then.crowding * first.gain,
})

const stay: CultureDay = { gain: 1, crowding: 0 }

/**
 * Seeded futures of a culture that leave open what will be harvested: the same draws as `cultureFutures`, as days that may
 * be walked through under any harvest. Crashes are not among them.
 * @throws ArgumentError when days, seed or futures cannot be one.
 */
export function cultureDaysAhead(input: {
  estimate: CultureEstimate
  days: number
  seed: number
  futures: number
}): CultureDays[] {
  const { estimate, days, seed, futures } = input
  assertWholeNumber('days', days, { min: 1, max: 366 })
  assertWholeNumber('futures', futures, { min: 1, max: 20_000 })
  const random = seededRandom(seed)
  const drawRates = rateDrawer(estimate.parameters, random)
  const pieces = piecesOfDays(estimate, days)
  return Array.from({ length: futures }, () => {
    const course = drawStart(estimate, random)
    const rates = drawRates()
    const walked = pieces.map((day) =>
      day.reduce((sofar, piece) => after(sofar, dayOf(drawPiece(course, piece, { rates, estimate, random }))), stay),
    )
    return { densityPerMl: Math.exp(course.logDensity), days: walked }
  })
}

/** The same with nothing drawn: rates and density as estimated, spell and eggs fading as they are expected to. */
export function expectedCultureDays({ estimate, days }: { estimate: CultureEstimate; days: number }): CultureDays {
  const { parameters, state, eggs, dilutionPerDay } = estimate
  const crowding = parameters.growthPerDay / parameters.capacityPerMl
  const walked = piecesOfDays(estimate, days).map((day) =>
    day.reduce((sofar, piece) => {
      const spell = state.spell * Math.exp(-parameters.reversionPerDay * (piece.day + piece.days / 2 - estimate.day))
      const promised = eggEffect(parameters, parameters, eggs, piece.day).growth
      const growth = parameters.growthPerDay - dilutionPerDay + spell + promised
      return after(sofar, dayOf({ growth, crowding, days: piece.days, toDensity: 0 }))
    }, stay),
  )
  return { densityPerMl: estimate.densityPerMl, days: walked }
}

/** The pieces of each whole day ahead. */
const piecesOfDays = (estimate: CultureEstimate, days: number) =>
  Array.from({ length: days }, (_, day) => stepLengths(estimate.day + day, estimate.day + day + 1, estimate.eggs))
