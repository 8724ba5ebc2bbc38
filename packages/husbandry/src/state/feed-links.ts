import type { PlainDate } from '@fryward/shared'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { standingBatches } from './batch-state.ts'

function linksOn(snapshot: RoomSnapshot, date: PlainDate) {
  return snapshot.feedLinks
    .filter((link) => link.fromOn <= date && (link.untilOn === null || link.untilOn >= date))
    .sort((a, b) => (a.fromOn < b.fromOn ? -1 : a.fromOn > b.fromOn ? 1 : a.id < b.id ? -1 : 1))
}

/** The cultures that feed a batch on a date, the oldest link first and a backup last: one culture a batch is cleaner. */
export function culturesFeeding(snapshot: RoomSnapshot, batch: SnapshotBatch, date: PlainDate): SnapshotCulture[] {
  const ids = new Set(
    linksOn(snapshot, date)
      .filter((link) => link.batchId === batch.id)
      .map((link) => link.cultureId),
  )
  const found = [...ids].flatMap((id) => snapshot.cultures.filter((culture) => culture.id === id))
  return [...found.filter((culture) => !culture.isBackup), ...found.filter((culture) => culture.isBackup)]
}

/** The batches that a culture is the first choice for, in order of name. */
export function batchesFedBy(snapshot: RoomSnapshot, culture: SnapshotCulture, date: PlainDate): SnapshotBatch[] {
  return standingBatches(snapshot)
    .filter(
      (batch) => culturesFeeding(snapshot, batch, date).find(({ kind }) => kind === culture.kind)?.id === culture.id,
    )
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}
