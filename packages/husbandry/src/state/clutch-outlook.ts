import type { Because, EggStage, FactOf } from '@fryward/shared'
import { daysBetween, elapsedDays, type HusbandryDay, instantOnDate } from '../calendar/husbandry-day.ts'
import { factLink, Gap, profileLink } from '../engine/rule.ts'
import type { RoomSnapshot, SnapshotClutch } from '../snapshot.ts'
import { findSpecies, type SpeciesProfile } from '../species/index.ts'
import { brooderRelease, type Forecast, hatchNights, type PastDuration, type SeenStage } from '../thermal/index.ts'
import { dateOf, factsUntil } from './day-facts.ts'
import { tankOf } from './larval-diet.ts'
import { rememberedBySnapshot } from './memo.ts'
import { tankWarmth } from './tank-warmth.ts'

export type ClutchOutlook = {
  species: SpeciesProfile
  /** 0 on the day of spawning. */
  ageDays: number
  forecast: Forecast
  /** Chance that it is this day's night, if it has not happened before. */
  tonight: number
  because: Because[]
}

/** How the room's four egg colours stand in a species' profile. */
const stageIds: Record<EggStage, string> = { orange: 'orange', dark: 'black', eyed: 'eyes', silver: 'silver' }

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

function workOut(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): ClutchOutlook | Gap {
  const species = findSpecies(clutch.species)
  if (!species) return new Gap(`${clutch.name}: no profile of ${clutch.species} says how long its eggs take.`)
  const tank = tankOf(snapshot, clutch)
  if (!tank) return new Gap(`${clutch.name}: say which tank it is in.`)
  const spawning = factsUntil(snapshot, 'spawning', { subjectId: clutch.id, until: day.endsAt }).at(-1)
  const { warmth, because: warm } = tankWarmth(snapshot, tank, { since: clutch.spawnedAt, until: day.endsAt })
  const looks = looksAt(snapshot, clutch, species, day)
  const history = pairHistory(snapshot, clutch)
  const lastLook = looks.facts.at(-1)
  const base = {
    ...warmth,
    spawnedAt: clutch.spawnedAt,
    lightsOff: { time: snapshot.room.lightsOffAt, timeZone: snapshot.room.timeZone },
    species,
    pairHistory: history,
  }
  const forecast = tooLateIsGap(clutch, () =>
    species.care.value === 'nest'
      ? hatchNights({ ...base, seenStage: looks.stages, ...(lastLook ? { notHatchedBy: lastLook.at } : {}) })
      : brooderRelease({ ...base, ...(lastLook ? { notReleasedBy: lastLook.at } : {}) }),
  )
  if (forecast instanceof Gap) return forecast
  const later = forecast.nights.filter(({ date }) => date >= day.date)
  const still = later.reduce((sum, { probability }) => sum + probability, 0)
  const tonight = later.find(({ date }) => date === day.date)?.probability ?? 0
  const stageLook = looks.facts.findLast(({ data }) => data.eggStage !== undefined)
  return {
    species,
    ageDays: daysBetween(dateOf(snapshot, clutch.spawnedAt), day.date),
    forecast,
    tonight: still > 0 ? tonight / still : 0,
    because: [
      ...(spawning ? [factLink(spawning, { label: 'spawned' })] : []),
      warm,
      profileLink(species.id, species.incubation.medianDays.source.citation, {
        label: history.length > 0 ? `usual time, moved by ${history.length} clutches of this pair` : 'usual time',
        quantity: { value: Number(forecast.level.medianDays.toFixed(2)), unit: 'days' },
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

function looksAt(snapshot: RoomSnapshot, clutch: SnapshotClutch, species: SpeciesProfile, day: HusbandryDay) {
  const facts: FactOf<'observation'>[] = factsUntil(snapshot, 'observation', {
    subjectId: clutch.id,
    until: day.endsAt,
  }).filter((fact) => fact.at > clutch.spawnedAt)
  const known = new Set(species.clutchStages.map(({ id }) => id))
  const stages = facts.flatMap((fact): SeenStage[] => {
    const stage = fact.data.eggStage && stageIds[fact.data.eggStage]
    return stage && known.has(stage) ? [{ stage, at: fact.at }] : []
  })
  return { facts, stages }
}

/** Earlier clutches of the pair, spawning to the night of their (first) hatch. */
function pairHistory(snapshot: RoomSnapshot, clutch: SnapshotClutch): PastDuration[] {
  return snapshot.clutches
    .filter((each) => each.pairId === clutch.pairId && each.id !== clutch.id && each.spawnedAt < clutch.spawnedAt)
    .flatMap((each): PastDuration[] => {
      const hatch = snapshot.facts.find((fact) => fact.kind === 'hatch' && fact.subjectId === each.id)
      if (hatch?.kind !== 'hatch') return []
      const { lightsOffAt, timeZone } = snapshot.room
      const durationDays = elapsedDays(
        each.spawnedAt,
        instantOnDate({ date: hatch.data.hatchedOn, time: lightsOffAt, timeZone }),
      )
      const temperatureC = tankOf(snapshot, each)?.temperatureC
      if (durationDays < 1 || durationDays > 60) return []
      return [{ durationDays, ...(temperatureC === undefined || temperatureC < 10 ? {} : { temperatureC }) }]
    })
}
