import { assertInRange, assertPositive } from './check-input.ts'
import { MOST_EATEN_PER_LARVA_PER_DAY } from './prey-density.ts'
import { normalDeviate, studentDeviate } from './student.ts'

export type GrazingObservation = {
  /** Prey per mL just after feeding. */
  beforePerMl: number
  /** Prey per mL at the end. */
  afterPerMl: number
  hours: number
  larvae: number
  volumeL: number
  /** Animals behind each count, for its error; left out, only the spread between observations speaks. */
  animalsCountedBefore?: number
  animalsCountedAfter?: number
  /** Continuous exchange meanwhile, tank volumes a day: what it flushes out is not eaten. */
  dilutionPerDay?: number
}

export type Grazing = {
  eatenPerLarvaPerHour: number
  lowerPerLarvaPerHour: number
  upperPerLarvaPerHour: number
  observations: number
  /** `learned` from this room's counts, or `upper-bound` when there is nothing to learn from: not an estimate. */
  basis: 'learned' | 'upper-bound'
  source: string
}

type Rate = { perHour: number; variance: number | null }

function rateOf(observation: GrazingObservation, index: number): Rate {
  const { beforePerMl, afterPerMl, hours, larvae, volumeL, dilutionPerDay = 0 } = observation
  const at = (name: string) => `observations[${index}].${name}`
  assertPositive(at('beforePerMl'), beforePerMl, 'per mL')
  assertInRange(at('afterPerMl'), afterPerMl, { min: 0, unit: 'per mL' })
  assertPositive(at('hours'), hours, 'hours')
  assertPositive(at('larvae'), larvae, 'larvae')
  assertPositive(at('volumeL'), volumeL, 'L')
  assertInRange(at('dilutionPerDay'), dilutionPerDay, { min: 0, unit: 'tank volumes a day' })
  const perLarvaHour = (volumeL * 1000) / (larvae * hours)
  const flushed = ((beforePerMl + afterPerMl) / 2) * ((dilutionPerDay * hours) / 24)
  const perHour = (beforePerMl - afterPerMl - flushed) * perLarvaHour
  const { animalsCountedBefore, animalsCountedAfter } = observation
  if (animalsCountedBefore === undefined || animalsCountedAfter === undefined) return { perHour, variance: null }
  assertPositive(at('animalsCountedBefore'), animalsCountedBefore, 'animals')
  assertInRange(at('animalsCountedAfter'), animalsCountedAfter, { min: 0, unit: 'animals' })
  // Poisson: a density from n animals has variance density^2 / n; an end count of 0 still carries one animal's doubt.
  const afterVariance =
    animalsCountedAfter > 0 ? afterPerMl ** 2 / animalsCountedAfter : (beforePerMl / animalsCountedBefore) ** 2
  return { perHour, variance: perLarvaHour ** 2 * (beforePerMl ** 2 / animalsCountedBefore + afterVariance) }
}

function pool(rates: readonly Rate[], level: number): { mean: number; half: number } {
  const mean = rates.reduce((sum, rate) => sum + rate.perHour, 0) / rates.length
  // Counting error is the floor: observations that happen to agree are no surer than their counts.
  const counting = rates.reduce((sum, rate) => sum + (rate.variance ?? 0), 0) / rates.length ** 2
  if (rates.length === 1) {
    // One observation without its count says nothing about its own error: anything from 0 to twice is left open.
    const half = counting > 0 ? normalDeviate(level) * Math.sqrt(counting) : Math.abs(mean)
    return { mean, half }
  }
  const spread = rates.reduce((sum, rate) => sum + (rate.perHour - mean) ** 2, 0) / (rates.length - 1) / rates.length
  const half = Math.max(
    studentDeviate(level, rates.length - 1) * Math.sqrt(spread),
    normalDeviate(level) * Math.sqrt(counting),
  )
  return { mean, half }
}

/**
 * Prey eaten per larva per hour, with its interval, from the room's own counts before and after: (before - after -
 * flushed) * volume / (larvae * hours), averaged over the observations (Student interval, never narrower than the
 * counting error). Births of prey in the tank are not separated. With no observation the answer is 1,900 a day per
 * larva (Treece & Davis 2000, SRAC Publication 701, marine larvae in general), flagged `upper-bound`.
 * @throws ArgumentError naming the observation when one of its figures cannot be.
 */
export function learnGrazing({
  observations,
  level = 0.95,
}: {
  observations: readonly GrazingObservation[]
  level?: number
}): Grazing {
  assertInRange('level', level, { min: 0.01, max: 0.999 })
  if (observations.length === 0) {
    const most = MOST_EATEN_PER_LARVA_PER_DAY / 24
    return {
      eatenPerLarvaPerHour: most,
      lowerPerLarvaPerHour: 0,
      upperPerLarvaPerHour: most,
      observations: 0,
      basis: 'upper-bound',
      source: 'Treece & Davis 2000, SRAC Publication 701: at most 1,900 per larva per day, marine larvae in general',
    }
  }
  const { mean, half } = pool(observations.map(rateOf), level)
  return {
    // Nobody eats less than nothing; the interval keeps the sign of the doubt at its upper end.
    eatenPerLarvaPerHour: Math.max(0, mean),
    lowerPerLarvaPerHour: Math.max(0, mean - half),
    upperPerLarvaPerHour: Math.max(0, mean + half),
    observations: observations.length,
    basis: 'learned',
    source: "this room's counts before and after feeding",
  }
}
