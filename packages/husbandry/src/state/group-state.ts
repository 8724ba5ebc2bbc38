import type { Id, Outcome } from '@fryward/shared'
import { factsOf, type Happened } from '../snapshot/facts-of.ts'
import type { SnapshotGroup } from '../snapshot/room-snapshot.ts'
import { type Book, bookNumber, entriesOf } from './book.ts'
import { bookLines, totalOf, type WrittenLine } from './book-lines.ts'

export type GroupNumbers = {
  arrived: number
  lost: number
  movedOn: number
  byOutcome: Record<Outcome, number>
  now: number | null
}

/** Fish of a group by the book: transfers in, less losses, moves and outcomes; a head count starts the book anew. */
export function groupNumbers(happened: Happened, group: Pick<SnapshotGroup, 'id'>): GroupNumbers {
  const lines = bookLines(happened, group.id)
  const outcomes = factsOf(happened, 'outcome', group.id)
  const numberOf = (outcome: Outcome) =>
    outcomes.filter((fact) => fact.data.outcome === outcome).reduce((sum, fact) => sum + fact.data.number, 0)
  const now = bookNumber(groupBook(happened, group.id))
  return {
    arrived: totalOf(lines, 'in'),
    lost: totalOf(lines, 'out', 'loss'),
    movedOn: totalOf(lines, 'out', 'transfer'),
    byOutcome: { placed: numberOf('placed'), kept: numberOf('kept'), culled: numberOf('culled') },
    now: now === null ? null : Math.round(now),
  }
}

export const groupBook = (happened: Happened, groupId: Id): Book => groupBookOf(bookLines(happened, groupId))

/** The same from lines that were written already, such as those up to a day. */
export function groupBookOf(lines: readonly WrittenLine[]): Book {
  const entries = entriesOf(lines, 'juveniles')
  const first = entries.find(({ kind }) => kind === 'in')
  // What a group began with stands from the first: a loss told of as earlier than the move was one of those fish.
  const isOpening = first !== undefined && !entries.some(({ kind, at }) => kind === 'count' && at < first.at)
  return isOpening
    ? { opening: first.number, entries: entries.filter((entry) => entry !== first) }
    : { opening: null, entries }
}
