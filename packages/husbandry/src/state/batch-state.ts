import type { Fact, FactOf, Id } from '@fryward/shared'
import type { Happened, RoomSnapshot, SnapshotBatch } from '../snapshot.ts'
import { type Book, bookNumber } from './book.ts'
import { arrivalsIn, countsOf, departures, total } from './book-entries.ts'

/** A batch stands on at least one hatch that is not struck out. */
export function isBatchStanding(snapshot: RoomSnapshot, batch: SnapshotBatch): boolean {
  return snapshot.facts.some((fact) => isHatchOf(fact, batch.id))
}

export type BatchNumbers = { hatched: number | null; lost: number; moved: number; now: number | null }

/** Larvae by the book: hatched and moved in, less losses seen and moves; a head count of larvae starts it anew. */
export function batchNumbers(snapshot: Happened, batch: Pick<SnapshotBatch, 'id'>): BatchNumbers {
  const book = batchBook(snapshot, batch.id)
  const now = bookNumber(book)
  return {
    hatched: book.opening,
    lost: total(departures(snapshot, batch.id, ['loss'])),
    moved: total(departures(snapshot, batch.id, ['transfer'])),
    now: now === null ? null : Math.round(now),
  }
}

export function batchBook(happened: Happened, batchId: Id): Book {
  const hatched = happened.facts.flatMap((fact) =>
    isHatchOf(fact, batchId) && fact.data.larvae !== undefined ? [fact.data.larvae] : [],
  )
  return {
    opening: hatched.length > 0 ? hatched.reduce((sum, larvae) => sum + larvae, 0) : null,
    entries: [
      ...arrivalsIn(happened, batchId),
      ...departures(happened, batchId, ['loss', 'transfer', 'outcome']),
      ...countsOf(happened, batchId, ({ of, volumeMl }) => of === 'larvae' && volumeMl === undefined),
    ],
  }
}

function isHatchOf(fact: Fact, batchId: Id): fact is FactOf<'hatch'> {
  return fact.kind === 'hatch' && (fact.subjectId === batchId || fact.data.batchId === batchId)
}
