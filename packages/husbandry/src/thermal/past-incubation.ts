import { dayMs } from '../calendar/elapsed.ts'
import { getSpecies, type SpeciesInput } from '../species/index.ts'
import { checkDate, checkInstant } from './check.ts'
import { type LightsOff, nightsAfter } from './nights.ts'
import type { PastDuration } from './pair-history.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

export interface PastIncubationInput extends TankWarmth {
  /** ISO 8601 instant. */
  spawnedAt: string
  /** Local date of the main hatch night (release night for brooders). */
  hatchedOn: string
  lightsOff: LightsOff
  species: SpeciesInput
}

/**
 * A finished clutch as an entry of pairHistory: days from spawning to the middle of its hatch window, and the constant
 * temperature (C) that would have done the same development.
 * @throws RangeError naming the argument, its value and what is allowed; also for a night that ended before spawning.
 */
export function pastIncubation(input: PastIncubationInput): Required<PastDuration> {
  const { incubation, hatchHoursAfterLightsOff } = getSpecies(input.species)
  const startMs = checkInstant('spawnedAt', input.spawnedAt)
  const hatchedMs = middleOfNight(input, startMs, hatchHoursAfterLightsOff.value)
  const durationDays = (hatchedMs - startMs) / dayMs
  const meanRate = thermalClock(incubation, startMs, input).progressDays(hatchedMs) / durationDays
  const q10 = incubation.q10.value
  const shiftC = q10 > 1 ? (10 * Math.log(meanRate)) / Math.log(q10) : 0
  return { durationDays, temperatureC: incubation.referenceTemperatureC.value + shiftC }
}

function middleOfNight(input: PastIncubationInput, startMs: number, window: { from: number; to: number }): number {
  const wanted = checkDate('hatchedOn', input.hatchedOn).toString()
  for (const { date, windowFromMs, windowToMs } of nightsAfter(startMs, input.lightsOff, window)) {
    const middleMs = (windowFromMs + windowToMs) / 2
    if (date === wanted && middleMs > startMs) return middleMs
    if (date > wanted) break
  }
  throw new RangeError(`hatchedOn: ${input.hatchedOn} has no night after spawnedAt ${input.spawnedAt}`)
}
