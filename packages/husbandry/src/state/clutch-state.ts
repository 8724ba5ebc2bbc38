import type { ClutchState } from '@fryward/shared'
import { factsOf, type RoomSnapshot, type SnapshotClutch } from '../snapshot.ts'

/** What has become of a clutch, from the standing facts alone: striking out the hatch brings it back to incubating. */
export function clutchState(snapshot: RoomSnapshot, clutch: SnapshotClutch): ClutchState {
  if (factsOf(snapshot, 'spawning', clutch.id).length === 0) return 'void'
  if (factsOf(snapshot, 'hatch', clutch.id).length > 0) return 'hatched'
  if (factsOf(snapshot, 'transfer', clutch.id).length > 0) return 'moved'
  const eggs = clutchEggs(snapshot, clutch)
  const lost = factsOf(snapshot, 'loss', clutch.id).reduce((sum, loss) => sum + loss.data.number, 0)
  if (eggs !== null && eggs > 0 && lost >= eggs) return 'lost'
  return 'incubating'
}

/** Eggs by the latest count, else as first written down; null when nobody has said. */
export function clutchEggs(snapshot: RoomSnapshot, clutch: Pick<SnapshotClutch, 'id'>): number | null {
  const count = factsOf(snapshot, 'count', clutch.id)
    .filter((fact) => fact.data.of === 'eggs')
    .at(-1)
  if (count) return Math.round(count.data.animals.reduce((sum, eggs) => sum + eggs, 0) / count.data.animals.length)
  return factsOf(snapshot, 'spawning', clutch.id).at(-1)?.data.eggs ?? null
}
