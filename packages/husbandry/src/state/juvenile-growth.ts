import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotGroup } from '../snapshot/room-snapshot.ts'
import { findSpecies } from '../species/index.ts'
import { growthOf, lengthMmAt } from '../species/juvenile-growth.ts'
import { dateOf, factsUntil } from './day-facts.ts'

type Measured = FactOf<'count'> | FactOf<'transfer'>

/** How old a group is and how long its fish are taken to be, in mm; `measured` where somebody held one to a ruler. */
export type JuvenileSize = { ageDays: number; lengthMm: number; measured: Measured | null }

// Where no batch says when they hatched: about as old as when clownfish are weaned. F136 (Cheng et al. 2015)
const settledAtDays = 25

/** Days since a group hatched, by its batch where that is known, else by the day on which it settled. */
function ageOf(group: SnapshotGroup, date: string): number {
  if (group.hatchedOn !== null) return Math.max(0, daysBetween(group.hatchedOn, date) - 1)
  const settled = findSpecies(group.species)?.feeding.weaningLastDay.value ?? settledAtDays
  return Math.max(0, daysBetween(group.settledOn, date)) + settled
}

/** A group's size on a day: as last measured and grown on as its kind does, or as they are at that age. */
export function juvenileSize(snapshot: RoomSnapshot, group: SnapshotGroup, day: HusbandryDay): JuvenileSize {
  const ageDays = ageOf(group, day.date)
  const measured = lastMeasured(snapshot, group, day)
  const growth = growthOf(group.species)
  const usual = lengthMmAt(growth, ageDays)
  const readMm = measured?.data.lengthMm
  if (!measured || readMm === undefined) return { ageDays, lengthMm: usual, measured: null }
  const then = lengthMmAt(growth, ageOf(group, dateOf(snapshot, measured.at)))
  return { ageDays, lengthMm: readMm * (usual / then), measured }
}

/** At a count of its own, or as they were when they came out of their batch. */
function lastMeasured(snapshot: RoomSnapshot, group: SnapshotGroup, day: HusbandryDay): Measured | null {
  const until = day.endsAt
  const counts = factsUntil(snapshot, 'count', { subjectId: group.id, until })
  const moves =
    group.fromBatchId === null ? [] : factsUntil(snapshot, 'transfer', { subjectId: group.fromBatchId, until })
  const ofGroup = [...moves.filter(({ data }) => data.toSubjectId === group.id), ...counts]
  return ofGroup.findLast(({ data }) => data.lengthMm !== undefined) ?? null
}
