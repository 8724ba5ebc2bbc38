import type { SnapshotTank } from '../../snapshot/room-snapshot.ts'

const withFish = ['broodstock', 'grow_out', 'quarantine'] as const
/** Tanks that are cared for by the calendar: broodstock, grow-out and quarantine. */
export const holdsFish = (tank: SnapshotTank): boolean => withFish.some((kind) => kind === tank.kind)
