import type { CountData, Instant } from '@fryward/shared'
import type { WrittenLine } from './book-lines.ts'

/** One line of a book of animals: some came, some left, or they were counted. */
export type BookEntry = { at: Instant; kind: 'in' | 'out' | 'count'; number: number }

/** The animals of one clutch, batch or group; `opening` is what it began with, null while nobody has said. */
export type Book = { opening: number | null; entries: readonly BookEntry[] }

/** The entries among a book's lines; of counts those of its own animals. */
export function entriesOf(lines: readonly WrittenLine[], counted: CountData['of']): BookEntry[] {
  return lines.flatMap(({ at, way, number, of }): BookEntry[] =>
    way === 'begin' || number === null || (way === 'count' && of !== counted) ? [] : [{ at, kind: way, number }],
  )
}

// A count tells what was there after everything else of its instant.
const rank = { in: 0, out: 1, count: 2 } as const

/** What the book says after its last entry; null when no number was ever written down. */
export function bookNumber(book: Book): number | null {
  return inOrder(book).reduce(after, book.opening)
}

/**
 * How many may still leave at an instant without the book running short then or later; a count starts it anew, so what
 * is told of late is held against the time before the next count alone.
 * @returns null when the book says no number for that time.
 */
export function mostThatMayLeave(book: Book, at: Instant): number | null {
  const entries = inOrder(book)
  const isBefore = (entry: BookEntry) => entry.at < at || (entry.at === at && entry.kind !== 'count')
  const then = entries.filter(isBefore).reduce(after, book.opening)
  let number = then
  let least = then
  for (const entry of entries.filter((each) => !isBefore(each))) {
    if (entry.kind === 'count') break
    number = after(number, entry)
    if (number !== null && least !== null) least = Math.min(least, number)
  }
  return least === null ? null : Math.round(least)
}

const inOrder = ({ entries }: Book): BookEntry[] =>
  [...entries].sort((a, b) => (a.at === b.at ? rank[a.kind] - rank[b.kind] : a.at < b.at ? -1 : 1))

/** Never below nothing: more that left than was written down had been there all the same. */
function after(number: number | null, entry: BookEntry): number | null {
  if (entry.kind === 'count') return entry.number
  if (number === null) return null
  return entry.kind === 'in' ? number + entry.number : Math.max(0, number - entry.number)
}
