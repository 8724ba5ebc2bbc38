import type { RoomSnapshot, SnapshotTank } from '../../snapshot.ts'

/** The tank with this id; throws when the snapshot does not hold it. */
export function tankById(snapshot: RoomSnapshot, id: string): SnapshotTank {
  const tank = snapshot.tanks.find((each) => each.id === id)
  if (!tank) throw new Error(`The snapshot has no tank ${id}`)
  return tank
}

const withFish = ['broodstock', 'grow_out', 'quarantine'] as const
/** Tanks that are cared for by the calendar: broodstock, grow-out and quarantine. */
export const holdsFish = (tank: SnapshotTank): boolean => withFish.some((kind) => kind === tank.kind)
