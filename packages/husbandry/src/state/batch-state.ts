import type { Id } from '@fryward/shared'
import type { Happened } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { type Book, bookNumber, entriesOf } from './book.ts'
import { bookLines, totalOf } from './book-lines.ts'

type Batch = Pick<SnapshotBatch, 'id'>

/** A batch stands on at least one hatch that is not struck out. */
export function isBatchStanding(happened: Happened, batch: Batch): boolean {
  return bookLines(happened, batch.id).some(({ way }) => way === 'begin')
}

/** The batches of a room that stand. */
export const standingBatches = (snapshot: RoomSnapshot): SnapshotBatch[] =>
  snapshot.batches.filter((batch) => isBatchStanding(snapshot, batch))

export type BatchNumbers = { hatched: number | null; lost: number; moved: number; now: number | null }

/** Larvae by the book: hatched and moved in, less losses seen and moves; a head count of larvae starts it anew. */
export function batchNumbers(happened: Happened, batch: Batch): BatchNumbers {
  const lines = bookLines(happened, batch.id)
  const book = batchBook(happened, batch.id)
  const now = bookNumber(book)
  return {
    hatched: book.opening,
    lost: totalOf(lines, 'out', 'loss'),
    moved: totalOf(lines, 'out', 'transfer'),
    now: now === null ? null : Math.round(now),
  }
}

/** Larvae of several nights add up: the book opens with all that hatched into the batch. */
export function batchBook(happened: Happened, batchId: Id): Book {
  const lines = bookLines(happened, batchId)
  const hatched = lines.flatMap(({ way, number }) => (way === 'begin' && number !== null ? [number] : []))
  return {
    opening: hatched.length > 0 ? hatched.reduce((sum, larvae) => sum + larvae, 0) : null,
    entries: entriesOf(lines, 'larvae'),
  }
}
