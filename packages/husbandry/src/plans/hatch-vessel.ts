import type { PlainDate } from '@fryward/shared'
import { daysBetween } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'

/** The hatch vessels by turns, so that one is free while the other hatches. */
export function hatchVessel(snapshot: RoomSnapshot, feedDate: PlainDate): SnapshotCulture | null {
  const vessels = snapshot.cultures
    .filter(({ kind }) => kind === 'artemia_hatch')
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
  const turn = daysBetween('2000-01-01', feedDate) % Math.max(1, vessels.length)
  return vessels[Math.abs(turn)] ?? null
}
