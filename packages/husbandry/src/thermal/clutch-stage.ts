import { dayMs } from '../calendar/elapsed.ts'
import { type ClutchStage, getSpecies, type SpeciesInput } from '../species/index.ts'
import { checkInstant } from './check.ts'
import { type PastDuration, pairLevel } from './pair-history.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

export interface ClutchStageInput extends TankWarmth {
  /** ISO 8601 instants. */
  spawnedAt: string
  at: string
  species: SpeciesInput
  pairHistory?: readonly PastDuration[] | undefined
}

export interface ExpectedClutchStage {
  /** 1 on the day of spawning, by whole days since. */
  dayNumber: number
  /** Share of development done by the median clutch of this pair; past 1 it is late. */
  share: number
  /** What the clutch should look like, one stage of each kind that the species' profile has. */
  expected: ClutchStage[]
}

/**
 * How far a clutch should be and how it should look at an instant.
 * @throws RangeError naming the argument, its value and what is allowed.
 */
export function clutchStageAt(input: ClutchStageInput): ExpectedClutchStage {
  const { incubation, clutchStages } = getSpecies(input.species)
  const startMs = checkInstant('spawnedAt', input.spawnedAt)
  const atMs = checkInstant('at', input.at)
  if (atMs < startMs) throw new RangeError(`at: ${input.at} is before spawnedAt ${input.spawnedAt}`)
  const median = Math.exp(pairLevel(incubation, input.pairHistory ?? []).logMean)
  const share = thermalClock(incubation, startMs, input).progressDays(atMs) / median
  const isNow = ({ share: { value } }: ClutchStage): boolean =>
    share >= value.from && (share < value.to || value.to >= 1)
  return { dayNumber: Math.floor((atMs - startMs) / dayMs) + 1, share, expected: clutchStages.filter(isNow) }
}
