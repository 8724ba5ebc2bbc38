import type { Because, PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { Gap } from '../rule/gap.ts'
import { factLink, profileLink } from '../rule/why.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotClutch } from '../snapshot/room-snapshot.ts'
import { findSpecies, type SpeciesProfile } from '../species/index.ts'
import type { Forecast } from '../thermal/index.ts'
import { clutchForecast } from './clutch-nights.ts'
import { dateOf, factsUntil } from './day-facts.ts'
import { tankOf } from './larval-diet.ts'
import { warmthLink } from './tank-warmth.ts'

export type ClutchOutlook = {
  species: SpeciesProfile
  /** 0 on the day of spawning. */
  ageDays: number
  forecast: Forecast
  /** Chance that it is this day's night, if it has not happened before. */
  tonight: number
  /** True while an earlier night may have been it, of which the pages tell the chance. */
  mayHaveHatched: boolean
  because: Because[]
}

// Temperatures that the thermal forecasts take.
const forecastC = { from: 10, to: 40 }

// What a page shows as 100 %.
const surely = 0.995

const remembered = rememberedBySnapshot<ClutchOutlook | Gap>()

/**
 * When a clutch should hatch, or a brooder let its young go, as known on the morning of a day.
 * @throws Gap when its species or tank is not known, or it is too old to be still there.
 */
export function clutchOutlook(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): ClutchOutlook {
  const found = remembered(snapshot, `${clutch.id} ${day.date}`, () => workOut(snapshot, clutch, day))
  if (found instanceof Gap) throw found
  return found
}

/** Chance that one of the nights from a date to another is it, as the pages tell of each. */
export const chanceOfNights = ({ forecast }: ClutchOutlook, { from, to }: { from: PlainDate; to: PlainDate }): number =>
  forecast.nights
    .filter(({ date }) => date >= from && date <= to)
    .reduce((sum, { probability }) => sum + probability, 0)

function workOut(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): ClutchOutlook | Gap {
  const species = findSpecies(clutch.species)
  if (!species)
    return new Gap(`${clutch.name}: how long the eggs of its species take is not known here. Look at them every day.`)
  const tank = tankOf(snapshot, clutch)
  if (!tank) return new Gap(`${clutch.name}: say which tank it is in.`)
  if (tank.temperatureC < forecastC.from || tank.temperatureC > forecastC.to)
    return new Gap(
      `${clutch.name}: ${tank.name} is set to ${tank.temperatureC} °C; eggs are forecast from 10 to 40 °C.`,
    )
  const forecast = tooLateIsGap(clutch, () => clutchForecast(snapshot, { clutch, at: day.endsAt }))
  if (forecast instanceof Gap) return forecast
  const later = forecast.nights.filter(({ date }) => date >= day.date)
  const still = later.reduce((sum, { probability }) => sum + probability, 0)
  const tonight = later.find(({ date }) => date === day.date)?.probability ?? 0
  const about = { subjectId: clutch.id, until: day.endsAt }
  const spawning = factsUntil(snapshot, 'spawning', about).at(-1)
  const stageLook = factsUntil(snapshot, 'observation', about).findLast(({ data }) => data.eggStage !== undefined)
  const { learnedFrom, medianDays } = forecast.level
  return {
    species,
    ageDays: daysBetween(dateOf(snapshot, clutch.spawnedAt), day.date),
    forecast,
    tonight: still > 0 ? tonight / still : 0,
    mayHaveHatched: still < surely,
    because: [
      ...(spawning ? [factLink(spawning, { label: 'spawned' })] : []),
      warmthLink(snapshot, tank, { since: clutch.spawnedAt, until: day.endsAt }),
      profileLink(species.tradeName, species.incubation.medianDays.source.citation, {
        label:
          learnedFrom > 0
            ? `usual time, moved by ${learnedFrom === 1 ? 'one clutch' : `${learnedFrom} clutches`} of this pair`
            : 'usual time',
        quantity: { value: Number(medianDays.toFixed(2)), unit: 'days' },
        joins: 'and',
      }),
      ...(stageLook
        ? [factLink(stageLook, { label: 'last seen', text: `eggs ${stageLook.data.eggStage}`, joins: 'and' })]
        : []),
    ],
  }
}

function tooLateIsGap<T>(clutch: SnapshotClutch, compute: () => T): T | Gap {
  try {
    return compute()
  } catch (error) {
    // The forecasts throw a RangeError for what cannot be: a clutch seen long after it must have hatched.
    if (error instanceof RangeError)
      return new Gap(`${clutch.name} is older than eggs can be: write down that it hatched or was lost.`)
    throw error
  }
}
