import type { Because } from '@fryward/shared'
import { elapsedDays } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { rememberedByContent } from '../memo/remembered.ts'
import { Gap } from '../rule/gap.ts'
import { factLink, profileLink } from '../rule/why.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotPair } from '../snapshot/room-snapshot.ts'
import { findSpecies } from '../species/index.ts'
import { type Forecast, nextSpawning } from '../thermal/index.ts'
import { clutchState } from './clutch-state.ts'

const forecasts = rememberedByContent<Forecast>(1000)

export type PairOutlook = { last: FactOf<'spawning'>; forecast: Forecast; because: Because[] }

/** Spawnings of a pair, by its clutches, oldest first; those struck out are not among the facts. */
export function spawningsOf(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): FactOf<'spawning'>[] {
  return snapshot.clutches
    .filter((clutch) => clutch.pairId === pair.id)
    .flatMap((clutch) => factsOf(snapshot, 'spawning', clutch.id))
    .filter((fact) => fact.at < day.endsAt)
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1))
}

/** Days from each to the next, without those that were no spawning's interval. */
export const intervalsBetween = (spawnings: readonly FactOf<'spawning'>[]): { intervalDays: number }[] =>
  spawnings.slice(1).flatMap((spawning, index) => {
    const intervalDays = elapsedDays(spawnings[index]!.at, spawning.at)
    return intervalDays >= 1 && intervalDays <= 400 ? [{ intervalDays }] : []
  })

export function isBrooding(snapshot: RoomSnapshot, pair: SnapshotPair): boolean {
  return snapshot.clutches.some((clutch) => clutch.pairId === pair.id && clutchState(snapshot, clutch) === 'incubating')
}

/**
 * When a pair should spawn next, from its own intervals over its species' usual; null while it has never spawned here.
 * @throws Gap for a species without a profile.
 */
export function pairOutlook(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): PairOutlook | null {
  const species = findSpecies(pair.species)
  if (!species)
    throw new Gap(`${pair.name}: how often its species spawns is not known here. Look for eggs every few days.`)
  const spawnings = spawningsOf(snapshot, pair, day)
  const last = spawnings.at(-1)
  if (!last) return null
  const intervals = intervalsBetween(spawnings)
  const asked = { spawnedAt: last.at, timeZone: snapshot.room.timeZone, species: pair.species, pairHistory: intervals }
  const forecast = forecasts(asked, () => nextSpawning({ ...asked, species }))
  const because: Because[] = [
    factLink(last, { label: 'last spawned' }),
    profileLink(species.tradeName, species.spawnInterval.medianDays.source.citation, {
      label: intervals.length > 0 ? `usual interval, moved by ${intervals.length} of this pair` : 'usual interval',
      quantity: { value: Number(forecast.level.medianDays.toFixed(1)), unit: 'days' },
      joins: 'and',
    }),
  ]
  return { last, forecast, because }
}
