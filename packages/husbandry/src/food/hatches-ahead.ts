import type { Night } from '@fryward/shared'
import { daysBetween, type HusbandryDay, noonOf } from '../calendar/husbandry-day.ts'
import { Gap } from '../rule/gap.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotPair } from '../snapshot/room-snapshot.ts'
import { findSpecies, isBrooder, type SpeciesProfile } from '../species/index.ts'
import { clutchOutlook } from '../state/clutch-outlook.ts'
import { clutchIntent, clutchState } from '../state/clutch-state.ts'
import { tankOf } from '../state/larval-diet.ts'
import { intervalsBetween, pairOutlook, spawningsOf } from '../state/pair-outlook.ts'
import { litRoom } from '../state/tank-light.ts'
import { hatchNights, nextSpawning } from '../thermal/index.ts'

/** Chances of each night from today's on; they add up to 1. */
export function nightsAhead(nights: readonly Night[], today: string): Night[] {
  const later = nights.filter(({ date }) => date >= today)
  const all = later.reduce((sum, { probability }) => sum + probability, 0)
  return all > 0 ? later.map(({ date, probability }) => ({ date, probability: probability / all })) : []
}

export type ClutchAhead = { clutch: SnapshotClutch; species: SpeciesProfile; nights: Night[] }

/** Clutches of species whose larvae eat rotifers, that are in the nest and not left with their parents, with their nights. */
export function clutchesAhead(
  snapshot: RoomSnapshot,
  today: HusbandryDay,
): { clutches: ClutchAhead[]; gaps: string[] } {
  const gaps: string[] = []
  const clutches = snapshot.clutches.flatMap((clutch): ClutchAhead[] => {
    if (clutchState(snapshot, clutch) !== 'incubating') return []
    if (clutchIntent(snapshot, clutch) === 'leave_with_parents' || !eatsRotifers(clutch.species)) return []
    try {
      const { forecast, species } = clutchOutlook(snapshot, clutch, today)
      const nights = nightsAhead(forecast.nights, today.date)
      if (nights.length > 0) return [{ clutch, species, nights }]
      gaps.push(`${clutch.name}: it should have hatched by now. Say what became of it, and the plan counts on that.`)
      return []
    } catch (error) {
      if (!(error instanceof Gap)) throw error
      gaps.push(error.message)
      return []
    }
  })
  return { clutches, gaps }
}

export const eatsRotifers = (species: string): boolean =>
  typeof findSpecies(species)?.feeding.rotiferLastDay.value === 'number'

/** Whether a plan of the rotifers can be asked what a clutch of a pair laid tonight would want; else what its young eat first. */
export type PairToAsk = {
  pairId: string
  name: string
  firstFood: SpeciesProfile['feeding']['firstFood']['value']
  eatsRotifers: boolean
  isPlanned: boolean
}

export const pairsToAsk = (snapshot: RoomSnapshot, today: HusbandryDay): PairToAsk[] =>
  snapshot.pairs.flatMap((pair) => {
    const species = findSpecies(pair.species)
    if (!species || pair.isResting) return []
    const known = { pairId: pair.id, name: pair.name, firstFood: species.feeding.firstFood.value }
    const onRotifers = eatsRotifers(pair.species)
    const isPlanned = onRotifers && hatchAfterSpawning(snapshot, pair, today) !== null
    return [{ ...known, eatsRotifers: onRotifers, isPlanned }]
  })

/** When a pair may spawn next, and how its larvae would follow: nights counted from the spawning. */
export type SpawningAhead = {
  pair: SnapshotPair
  /** What its futures are drawn by, and what it is called: the pair's own id and name. */
  key: string
  name: string
  species: SpeciesProfile
  /** Days until the next spawning, with their chances. */
  nextDays: { day: number; probability: number }[]
  /** Days from one spawning to the one after it, and its spread. */
  interval: { medianDays: number; logSd: number }
  /** Nights from spawning to hatch. */
  hatch: { nights: number; probability: number }[]
}

/**
 * Of pairs that are not resting, have spawned here before, and tend a nest of rotifer eaters. Eggs that float are collected when
 * somebody has a tank for them: what was collected says nothing of when they will be again.
 */
export function spawningsAhead(snapshot: RoomSnapshot, today: HusbandryDay): SpawningAhead[] {
  return snapshot.pairs.flatMap((pair) => {
    const species = findSpecies(pair.species)
    const outlook = !pair.isResting && eatsRotifers(pair.species) && pairOutlook(snapshot, pair, today)
    const hatch = species && hatchAfterSpawning(snapshot, pair, today)
    if (!species || !outlook || !hatch || species.care.value === 'pelagic') return []
    const nextDays = nextSpawningDays(snapshot, pair, today)
    if (nextDays.length === 0) return []
    const { medianDays, logSd } = outlook.forecast.level
    return [{ pair, key: pair.id, name: pair.name, species, nextDays, interval: { medianDays, logSd }, hatch }]
  })
}

function nextSpawningDays(snapshot: RoomSnapshot, pair: SnapshotPair, today: HusbandryDay) {
  const spawnings = spawningsOf(snapshot, pair, today)
  const { timeZone } = snapshot.room
  try {
    const own = { spawnedAt: spawnings.at(-1)!.at, pairHistory: intervalsBetween(spawnings) }
    const asked = { ...own, timeZone, species: pair.species, notSpawnedBy: today.date }
    return nextSpawning(asked).nights.map(({ date, probability }) => ({
      day: Math.max(0, daysBetween(today.date, date)),
      probability,
    }))
  } catch (error) {
    // A pair so long overdue is not spawning: it may be resting or spent, and nobody knows when it starts again.
    if (error instanceof RangeError) return []
    throw error
  }
}

/** Nights from a spawning at noon to its hatch in the pair's own tank; null where that cannot be said. */
export function hatchAfterSpawning(snapshot: RoomSnapshot, pair: SnapshotPair, today: HusbandryDay) {
  const tank = tankOf(snapshot, pair)
  const species = findSpecies(pair.species)
  if (!tank || !species || isBrooder(species.care.value) || tank.temperatureC < 10 || tank.temperatureC > 40)
    return null
  const { nights } = hatchNights({
    spawnedAt: noonOf(snapshot.room, today.date),
    temperatures: [],
    setPointC: tank.temperatureC,
    lightsOff: { time: litRoom(snapshot, tank).lightsOffAt, timeZone: snapshot.room.timeZone },
    species,
  })
  return nights.map(({ date, probability }) => ({ nights: daysBetween(today.date, date), probability }))
}

/**
 * Chance that a clutch still to be laid will be raised, from what became of this room's clutches; one of each, raised and
 * not, is counted besides.
 */
export function raisedShare(snapshot: RoomSnapshot): number {
  const ended = snapshot.clutches.filter((clutch) => clutchState(snapshot, clutch) !== 'incubating')
  const raised = ended.filter(({ id }) => factsOf(snapshot, 'hatch', id).some(({ data }) => data.batchId !== undefined))
  return (1 + raised.length) / (2 + ended.length)
}
