import type { ClutchLife, PlainDate, SurvivalStageName } from '@fryward/shared'
import { addDays, noonOf } from '../calendar/husbandry-day.ts'
import type { SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { findSpecies, isBrooder, type SpeciesProfile } from '../species/index.ts'
import { brooderRelease, hatchNights, metamorphosis, type TemperatureReading } from '../thermal/index.ts'
import { ageOn } from './brood-book.ts'
import type { BroodReview } from './brood-review.ts'
import type { ReviewRoom } from './review-room.ts'
import { endsOn, FIRST_MARK_DAYS } from './stages.ts'

/** How warm a tank was: what was measured in it, and its set point for the rest. */
export type TankTemperatures = { readings: readonly TemperatureReading[]; setPointC: number | null }

/** Temperatures that the thermal forecasts take. */
const forecastC = { from: 10, to: 40 }
/** A life line of larvae and young that is longer tells nothing by the day. */
const MOST_DAYS = 400

/** How many there were at the end of each day from the hatch to today, or to the day on which the last had gone. */
export function numbersByDay(room: ReviewRoom, { book }: BroodReview): ClutchLife['numbers'] {
  const { bornOn } = book
  if (bornOn === null) return []
  const numbers: ClutchLife['numbers'] = []
  for (let day = 0; day <= MOST_DAYS; day += 1) {
    const on = addDays(bornOn, day)
    if (on > room.today) break
    const { atLeast, atMost } = endsOn(book, on)
    numbers.push({
      on,
      ageDays: ageOn(bornOn, on),
      atLeast,
      atMost,
      isCounted: book.countedOn.includes(on) && book.numberOn(on) !== null,
    })
    if (atMost === 0) break
  }
  return numbers
}

type Expected = ClutchLife['expected']
type Window = { from: PlainDate; to: PlainDate }
type Clock = Pick<ReviewRoom, 'timeZone'>
/** Eggs hatch by the evening that falls over their tank. */
type EggTank = TankTemperatures & { lightsOffAt: string }
type Asked = { review: BroodReview; ofEggs: EggTank; ofLarvae: TankTemperatures }

/**
 * When hatch, first food, day 5, metamorphosis and the last day of weaning should come: eight in ten of their likelihood,
 * by the warmth of the tank with the eggs and of the one with the larvae. Empty for a species that no profile describes.
 */
export function expectedStages(room: Clock, asked: Asked): Expected {
  const { review, ofEggs, ofLarvae } = asked
  const [clutch] = review.brood.clutches
  const species = clutch && findSpecies(clutch.species)
  if (!species) return []
  const hatch = hatchWindow(room, { clutch, species, warmth: warmthOf(ofEggs), lightsOffAt: ofEggs.lightsOffAt })
  const { bornOn } = review.book
  const born = bornOn === null ? hatch : { from: bornOn, to: bornOn }
  const turned = bornOn === null ? null : turnWindow(room, { bornOn, species, warmth: warmthOf(ofLarvae) })
  const after = (stage: SurvivalStageName, days: number): Expected =>
    born ? [{ stage, from: addDays(born.from, days), to: addDays(born.to, days) }] : []
  return [
    ...(hatch ? [{ stage: 'hatched' as const, ...hatch }] : []),
    ...after('first_feed', 0),
    ...after('day_5', FIRST_MARK_DAYS),
    ...(turned ? [{ stage: 'metamorphosis' as const, ...turned }] : []),
    ...after('settled', species.feeding.weaningLastDay.value),
  ]
}

type Warmth = ReturnType<typeof warmthOf>

/** Mornings on which larvae may have been there, by the nights before. */
function hatchWindow(
  room: Clock,
  asked: { clutch: SnapshotClutch; species: SpeciesProfile; warmth: Warmth; lightsOffAt: string },
): Window | null {
  const { clutch, species, warmth, lightsOffAt } = asked
  if (!warmth) return null
  const lightsOff = { time: lightsOffAt, timeZone: room.timeZone }
  const eggs = { spawnedAt: clutch.spawnedAt, lightsOff, species, ...warmth }
  const { window80 } = isBrooder(species.care.value) ? brooderRelease(eggs) : hatchNights(eggs)
  return { from: addDays(window80.from, 1), to: addDays(window80.to, 1) }
}

function turnWindow(
  room: Clock,
  { bornOn, species, warmth }: { bornOn: PlainDate; species: SpeciesProfile; warmth: Warmth },
): Window | null {
  if (!species.larvalDuration || !warmth) return null
  return metamorphosis({ hatchedAt: noonOf(room, bornOn), timeZone: room.timeZone, species, ...warmth }).window80
}

/** Null where nothing says how warm it was, or it was beyond what the forecasts take. */
function warmthOf({ readings, setPointC }: TankTemperatures) {
  const within = readings.filter(({ temperatureC }) => isForecast(temperatureC))
  if (setPointC === null ? within.length === 0 : !isForecast(setPointC)) return null
  return { temperatures: within, setPointC: setPointC ?? undefined }
}

const isForecast = (temperatureC: number) => temperatureC >= forecastC.from && temperatureC <= forecastC.to
