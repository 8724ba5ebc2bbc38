import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { daysSince } from '../state/day-facts.ts'
import { type OxygenHeld, oxygenHeld } from '../state/oxygen-held.ts'
import { type WaterRead, waterReads } from '../state/water-reads.ts'

/** Oxygen as it was read last, and the share that it is of what the water then held. */
export type TankOxygen = { read: WaterRead; held: OxygenHeld; share: number }

/** A tank's last oxygen, by gauge or by hand, when it is of today or yesterday. */
export function tankOxygen(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): TankOxygen | null {
  const read = waterReads(snapshot, 'oxygenMgPerL', { subjectId: tank.id, until: day.endsAt }).at(-1)
  const age = daysSince(snapshot, read, day.date)
  if (!read || age === null || age > 1) return null
  const held = oxygenHeld(snapshot, tank, read.at)
  return { read, held, share: read.value / held.mgPerL }
}
