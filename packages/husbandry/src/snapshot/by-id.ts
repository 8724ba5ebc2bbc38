import type { Id } from '@fryward/shared'
import type {
  RoomSnapshot,
  SnapshotBatch,
  SnapshotClutch,
  SnapshotCulture,
  SnapshotGroup,
  SnapshotPair,
  SnapshotTank,
} from './room-snapshot.ts'

// A rule is asked about subjects of the snapshot alone: one that is not there is a mistake of the engine.
function byId<T extends { id: Id }>(list: readonly T[], what: string, id: Id): T {
  const found = list.find((each) => each.id === id)
  if (!found) throw new Error(`The snapshot has no ${what} ${id}`)
  return found
}

export const tankById = ({ tanks }: RoomSnapshot, id: Id): SnapshotTank => byId(tanks, 'tank', id)
export const cultureById = ({ cultures }: RoomSnapshot, id: Id): SnapshotCulture => byId(cultures, 'culture', id)
export const pairById = ({ pairs }: RoomSnapshot, id: Id): SnapshotPair => byId(pairs, 'pair', id)
export const clutchById = ({ clutches }: RoomSnapshot, id: Id): SnapshotClutch => byId(clutches, 'clutch', id)
export const batchById = ({ batches }: RoomSnapshot, id: Id): SnapshotBatch => byId(batches, 'larval batch', id)
export const groupById = ({ groups }: RoomSnapshot, id: Id): SnapshotGroup => byId(groups, 'juvenile group', id)
