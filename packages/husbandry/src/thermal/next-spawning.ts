import { dayMs } from '../calendar/elapsed.ts'
import { getSpecies, type SpeciesInput } from '../species/index.ts'
import { checkInstant, checkNumber } from './check.ts'
import { type Forecast, forecast } from './forecast.ts'
import { daysFrom } from './nights.ts'
import { predictPair } from './pair-level.ts'

export interface NextSpawningInput {
  /** ISO 8601 instant of the pair's last spawning. */
  spawnedAt: string
  timeZone: string
  species: SpeciesInput
  /** Days between earlier spawnings of the pair. */
  pairHistory?: readonly { intervalDays: number }[] | undefined
  /** An instant, or a local date for its morning, by which the pair had not spawned again. */
  notSpawnedBy?: string | undefined
}

const intervalRange = { from: 1, to: 400 }

/**
 * Probability, for each local date, that the pair spawns again: its own intervals over its species' prior.
 * Temperature is not in it: the only pairs known differ in season as well. A pair that rests is simply late.
 * @throws RangeError naming the argument, its value and what is allowed.
 */
export function nextSpawning(input: NextSpawningInput): Forecast {
  const { spawnInterval } = getSpecies(input.species)
  const startMs = checkInstant('spawnedAt', input.spawnedAt)
  const intervals = (input.pairHistory ?? []).map(({ intervalDays }, index) =>
    checkNumber(`pairHistory[${index}].intervalDays`, intervalDays, intervalRange),
  )
  const { medianDays, spreadBetweenPairs, spreadWithinPair } = spawnInterval
  const prior = {
    medianDays: medianDays.value,
    spreadBetweenPairs: spreadBetweenPairs.value,
    spreadWithinPair: spreadWithinPair.value,
  }
  const by = input.notSpawnedBy
  return forecast({
    periods: daysFrom(startMs, input.timeZone),
    startMs,
    progressDays: (epochMs) => (epochMs - startMs) / dayMs,
    hoursOutsideTried: () => 0,
    level: predictPair(prior, intervals),
    learnedFrom: intervals.length,
    notYet: by === undefined ? [] : [{ argument: 'notSpawnedBy', value: by }],
    basis: [
      { name: 'median interval', value: medianDays.value, unit: 'days', source: medianDays.source },
      { name: 'spread between pairs', value: spreadBetweenPairs.value, unit: 'log', source: spreadBetweenPairs.source },
      { name: 'spread within a pair', value: spreadWithinPair.value, unit: 'log', source: spreadWithinPair.source },
    ],
  })
}
