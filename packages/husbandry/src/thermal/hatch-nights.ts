import { getSpecies, isBrooder, type SpeciesInput, type SpeciesProfile } from '../species/index.ts'
import { checkInstant, checkNumber } from './check.ts'
import { type Basis, type Forecast, forecast, type NightProbability } from './forecast.ts'
import { type LightsOff, nightsAfter } from './nights.ts'
import { type PastDuration, pairLevel, thermalBasis } from './pair-history.ts'
import { type SeenStage, stageBasis, stageLikelihood } from './seen-stage.ts'
import { type TankWarmth, thermalClock } from './thermal-clock.ts'

export interface HatchNightsInput extends TankWarmth {
  /** ISO 8601 instant. */
  spawnedAt: string
  lightsOff: LightsOff
  species: SpeciesInput
  /** The pair's earlier clutches, spawning to main hatch. */
  pairHistory?: readonly PastDuration[] | undefined
  /** An instant, or a local date for its morning, by which nothing had hatched. */
  notHatchedBy?: string | undefined
  /** What was seen of the clutch; seeing eggs also says that they had not hatched. */
  seenStage?: SeenStage | readonly SeenStage[] | undefined
  /** Share of the clutch left for the evening after the main one, 0 to 0.5; the species' own when left out. */
  secondNightShare?: number | undefined
}

export interface HatchNight extends NightProbability {
  /** Expected share of the whole clutch that hatches this night: the main hatch or the remainder. */
  shareHatching: number
}

export interface HatchForecast extends Forecast<HatchNight> {
  secondNightShare: number
}

/**
 * Probability, for each night, that it is the main hatch night of a clutch in a nest or afloat.
 *
 * Development is progress: d(progress)/dt = 1 / D(T) over the tank's readings. A clutch hatches in the night whose
 * window lies nearest to its duration, since published durations are themselves counted to a hatch.
 * Before anything is seen of the clutch, warmer water never moves probability to a later night: the slope's own
 * uncertainty is flagged (isExtrapolated), not spread over nights.
 * @throws RangeError naming the argument, its value and what is allowed; also for a species that broods.
 */
export function hatchNights(input: HatchNightsInput): HatchForecast {
  const species = getSpecies(input.species)
  if (isBrooder(species.care.value)) {
    throw new RangeError(`species: ${species.id} broods in its ${species.care.value}; use brooderRelease`)
  }
  const startMs = checkInstant('spawnedAt', input.spawnedAt)
  const history = input.pairHistory ?? []
  const looks = looksOf(input.seenStage)
  const clock = thermalClock(species.incubation, startMs, input)
  const secondNightShare = checkNumber('secondNightShare', input.secondNightShare ?? species.secondNightShare.value, {
    from: 0,
    to: 0.5,
  })
  const result = forecast({
    periods: nightsAfter(startMs, input.lightsOff, species.hatchHoursAfterLightsOff.value),
    startMs,
    ...clock,
    level: pairLevel(species.incubation, history),
    learnedFrom: history.length,
    likelihood: looks.length > 0 ? stageLikelihood(looks, species, clock, startMs) : undefined,
    notYet: notHatched(input.notHatchedBy, looks),
    basis: [...hatchBasis(species, secondNightShare), ...(looks.length > 0 ? stageBasis : [])],
  })
  return withSecondNight(result, secondNightShare)
}

function looksOf(seen: HatchNightsInput['seenStage']): readonly SeenStage[] {
  if (seen === undefined) return []
  return 'stage' in seen ? [seen] : seen
}

function notHatched(by: string | undefined, looks: readonly SeenStage[]) {
  const said = by === undefined ? [] : [{ argument: 'notHatchedBy', value: by }]
  return [...said, ...looks.map(({ at }, index) => ({ argument: `seenStage[${index}].at`, value: at }))]
}

/** A share that the caller gave stands without the species' source, so it is not listed. */
function hatchBasis(species: SpeciesProfile, secondNightShare: number): Basis[] {
  const { value, source } = species.secondNightShare
  const share = { name: 'share on a second night', value, unit: 'share', source }
  return [...thermalBasis(species.incubation), ...(value === secondNightShare ? [share] : [])]
}

function withSecondNight(result: Forecast, secondNightShare: number): HatchForecast {
  const nights = result.nights.map((night, index) => ({
    ...night,
    shareHatching:
      night.probability * (1 - secondNightShare) + (result.nights[index - 1]?.probability ?? 0) * secondNightShare,
  }))
  const likeliest = nights.find(({ date }) => date === result.likeliest.date)!
  return { ...result, nights, likeliest, secondNightShare }
}
