import type { Id } from '@fryward/shared'
import type { Happened } from '../snapshot/facts-of.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { type Book, type BookEntry, bookNumber, entriesOf } from './book.ts'
import { bookLines, totalOf, type WrittenLine } from './book-lines.ts'

type Batch = Pick<SnapshotBatch, 'id'>

/** A batch stands on at least one hatch that is not struck out. */
export function isBatchStanding(happened: Happened, batch: Batch): boolean {
  return bookLines(happened, batch.id).some(({ way }) => way === 'begin')
}

/** The batches of a room that stand. */
export const standingBatches = (snapshot: RoomSnapshot): SnapshotBatch[] =>
  snapshot.batches.filter((batch) => isBatchStanding(snapshot, batch))

/** Those that have larvae by their book, or of which nobody has said how many: an empty one eats nothing. */
export const livingBatches = (snapshot: RoomSnapshot): SnapshotBatch[] =>
  living(snapshot, 'living', () => standingBatches(snapshot).filter((batch) => batchNumbers(snapshot, batch).now !== 0))
const living = rememberedBySnapshot<SnapshotBatch[]>()

export type BatchNumbers = { hatched: number | null; lost: number; moved: number; now: number | null }

/** Larvae by the book: hatched and moved in, less losses seen and moves; a head count of larvae starts it anew. */
export function batchNumbers(happened: Happened, batch: Batch): BatchNumbers {
  const lines = bookLines(happened, batch.id)
  const book = batchBook(happened, batch.id)
  const now = bookNumber(book)
  return {
    hatched: larvaeOf(lines.filter(({ way, number }) => way === 'begin' && number !== null)),
    lost: totalOf(lines, 'out', 'loss'),
    moved: totalOf(lines, 'out', 'transfer'),
    now: now === null ? null : Math.round(now),
  }
}

/** Larvae of several nights add up: the book opens with all that hatched into the batch before anybody counted. */
export const batchBook = (happened: Happened, batchId: Id): Book => batchBookOf(bookLines(happened, batchId))

/** The same from lines that were written already, such as those up to a day. */
export function batchBookOf(lines: readonly WrittenLine[]): Book {
  const entries = entriesOf(lines, 'larvae')
  const counted = entries.find(({ kind }) => kind === 'count')
  const isLate = ({ at }: WrittenLine) => counted !== undefined && at > counted.at
  const hatches = lines.filter(({ way, number }) => way === 'begin' && number !== null)
  const later = hatches.filter(isLate).map(({ at, number }): BookEntry => ({ at, kind: 'in', number: number ?? 0 }))
  return { opening: larvaeOf(hatches.filter((line) => !isLate(line))), entries: [...entries, ...later] }
}

const larvaeOf = (hatches: readonly WrittenLine[]): number | null =>
  hatches.length > 0 ? hatches.reduce((sum, { number }) => sum + (number ?? 0), 0) : null
