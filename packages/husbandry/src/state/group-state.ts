import type { Id, Outcome } from '@fryward/shared'
import { factsOf, type Happened, type SnapshotGroup } from '../snapshot.ts'
import { type Book, bookNumber } from './book.ts'
import { arrivalsIn, countsOf, departures, total } from './book-entries.ts'

export type GroupNumbers = {
  arrived: number
  lost: number
  movedOn: number
  byOutcome: Record<Outcome, number>
  now: number | null
}

/** Fish of a group by the book: transfers in, less losses, moves and outcomes; a head count starts the book anew. */
export function groupNumbers(snapshot: Happened, group: Pick<SnapshotGroup, 'id'>): GroupNumbers {
  const outcomes = factsOf(snapshot, 'outcome', group.id)
  const numberOf = (outcome: Outcome) =>
    outcomes.filter((fact) => fact.data.outcome === outcome).reduce((sum, fact) => sum + fact.data.number, 0)
  const now = bookNumber(groupBook(snapshot, group.id))
  return {
    arrived: total(arrivalsIn(snapshot, group.id)),
    lost: total(departures(snapshot, group.id, ['loss'])),
    movedOn: total(departures(snapshot, group.id, ['transfer'])),
    byOutcome: { placed: numberOf('placed'), kept: numberOf('kept'), culled: numberOf('culled') },
    now: now === null ? null : Math.round(now),
  }
}

export function groupBook(happened: Happened, groupId: Id): Book {
  const counts = countsOf(happened, groupId, ({ of }) => of === 'juveniles')
  const [first, ...later] = arrivalsIn(happened, groupId)
  // What a group began with stands from the first: a loss told of as earlier than the move was one of those fish.
  const isOpening = first !== undefined && !counts.some(({ at }) => at < first.at)
  return {
    opening: isOpening ? first.number : null,
    entries: [
      ...(first && !isOpening ? [first] : []),
      ...later,
      ...departures(happened, groupId, ['loss', 'transfer', 'outcome']),
      ...counts,
    ],
  }
}
