import type { RoomSnapshot, SnapshotGroup } from '../../snapshot.ts'

/** The group with this id; throws when the snapshot does not hold it. */
export function groupById(snapshot: RoomSnapshot, id: string): SnapshotGroup {
  const group = snapshot.groups.find((each) => each.id === id)
  if (!group) throw new Error(`The snapshot has no juvenile group ${id}`)
  return group
}
