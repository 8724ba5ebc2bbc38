import { getSpecies, isBrooder, type SpeciesInput } from '../species/index.ts'
import { checkInstant } from './check.ts'
import { type Forecast, forecast } from './forecast.ts'
import { type LightsOff, nightsAfter } from './nights.ts'
import { type PastDuration, pairLevel, thermalBasis } from './pair-history.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

export interface BrooderReleaseInput extends TankWarmth {
  /** ISO 8601 instant at which the parent took the eggs. */
  spawnedAt: string
  lightsOff: LightsOff
  species: SpeciesInput
  /** The pair's earlier broods, spawning to release. */
  pairHistory?: readonly PastDuration[] | undefined
  /** An instant, or a local date for its morning, by which no young were out. */
  notReleasedBy?: string | undefined
}

/**
 * Probability, for each night, that a mouth or pouch brooder lets its young go: incubation and, for a mouthbrooder,
 * the days that hatched young stay (P. kauderni 19 + 10 days; H. erectus 17.3 days to birth).
 * @throws RangeError naming the argument, its value and what is allowed; also for a species that does not carry its eggs.
 */
export function brooderRelease(input: BrooderReleaseInput): Forecast {
  const species = getSpecies(input.species)
  if (!isBrooder(species.care.value)) {
    throw new RangeError(`species: ${species.id} does not carry its eggs; use hatchNights`)
  }
  const startMs = checkInstant('spawnedAt', input.spawnedAt)
  const history = input.pairHistory ?? []
  const staying = species.broodingAfterHatchDays
  const by = input.notReleasedBy
  return forecast({
    periods: nightsAfter(startMs, input.lightsOff, species.hatchHoursAfterLightsOff.value),
    startMs,
    ...thermalClock(species.incubation, startMs, input),
    level: pairLevel(species.incubation, history, staying.value),
    learnedFrom: history.length,
    notYet: by === undefined ? [] : [{ argument: 'notReleasedBy', value: by }],
    basis: [
      ...thermalBasis(species.incubation),
      { name: 'days young stay after hatch', value: staying.value, unit: 'days', source: staying.source },
    ],
  })
}
