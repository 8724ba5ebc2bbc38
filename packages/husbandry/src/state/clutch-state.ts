import type { ClutchIntent, ClutchState, Id } from '@fryward/shared'
import { factsOf, type Happened, lastFactOf, type RoomSnapshot, type SnapshotClutch } from '../snapshot.ts'
import { type Book, bookNumber } from './book.ts'
import { countsOf, departures, headsOf } from './book-entries.ts'

/** What has become of a clutch, from the standing facts alone: striking out the hatch brings it back to incubating. */
export function clutchState(snapshot: RoomSnapshot, clutch: SnapshotClutch): ClutchState {
  if (factsOf(snapshot, 'spawning', clutch.id).length === 0) return 'void'
  if (factsOf(snapshot, 'hatch', clutch.id).length > 0) return 'hatched'
  if (factsOf(snapshot, 'transfer', clutch.id).length > 0) return 'moved'
  const eggs = clutchEggs(snapshot, clutch)
  if (eggs !== null && eggs > 0 && bookNumber(clutchBook(snapshot, clutch.id)) === 0) return 'lost'
  return 'incubating'
}

/** What is meant with a clutch: the latest decision that stands, else what was meant when it was written down. */
export function clutchIntent(snapshot: RoomSnapshot, clutch: SnapshotClutch): ClutchIntent {
  return lastFactOf(snapshot, 'decision', clutch.id)?.data.intent ?? clutch.intent
}

/** Eggs by the latest count, else as first written down; null when nobody has said. */
export function clutchEggs(snapshot: RoomSnapshot, clutch: Pick<SnapshotClutch, 'id'>): number | null {
  const count = factsOf(snapshot, 'count', clutch.id)
    .filter((fact) => fact.data.of === 'eggs')
    .at(-1)
  if (count) return Math.round(headsOf(count.data))
  return factsOf(snapshot, 'spawning', clutch.id).at(-1)?.data.eggs ?? null
}

/** Eggs by the book: laid, less losses and moves; a count of eggs starts it anew. */
export function clutchBook(happened: Happened, clutchId: Id): Book {
  return {
    opening: factsOf(happened, 'spawning', clutchId).at(-1)?.data.eggs ?? null,
    entries: [
      ...departures(happened, clutchId, ['loss', 'transfer']),
      ...countsOf(happened, clutchId, ({ of }) => of === 'eggs'),
    ],
  }
}
