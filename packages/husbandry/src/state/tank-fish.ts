import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { livingBatches } from './batch-state.ts'
import { groupNumbers } from './group-state.ts'
import { arrivalIn } from './quarantine-state.ts'

const keptByCalendar = ['broodstock', 'grow_out', 'quarantine'] as const

/**
 * True for a tank that is cared for by the calendar (broodstock, grow-out, quarantine) and has fish in it: a pair, a group,
 * larvae that hatched in it, or fish that came into quarantine. An empty one asks for nothing that needs fish.
 */
export function holdsFish(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): boolean {
  if (!keptByCalendar.some((kind) => kind === tank.kind)) return false
  return hasKnownFish(snapshot, tank) || arrivalIn(snapshot, tank, day) !== null
}

/** Fish with a page of their own: a pair, a group, a batch. */
export function hasKnownFish(snapshot: RoomSnapshot, { id }: SnapshotTank): boolean {
  return (
    snapshot.pairs.some(({ tankId }) => tankId === id) ||
    snapshot.groups.some((group) => group.tankId === id && groupNumbers(snapshot, group).now !== 0) ||
    hasLarvae(snapshot, { id })
  )
}

/** True while a batch swims in a tank. */
export const hasLarvae = (snapshot: RoomSnapshot, { id }: Pick<SnapshotTank, 'id'>): boolean =>
  livingBatches(snapshot).some((batch) => batch.tankId === id)
