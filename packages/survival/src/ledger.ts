import { ArgumentError, assertAtLeast, assertWhole } from './argument-error.ts'

/** What a group's book holds: counts, and what came and went between them. */
export type LedgerEntry = {
  day: number
  kind: 'count' | 'loss' | 'movedIn' | 'movedOut' | 'placed' | 'culled'
  animals: number
  /** Of a count that is an estimate; 0 (a head count) when left out. */
  standardError?: number
}

/** What came and went between two counts, and what the second count says of the book. */
export type LedgerInterval = {
  fromDay: number
  toDay: number
  atStart: number
  startError: number
  movedIn: number
  movedOut: number
  placed: number
  culled: number
  /** Dead that were seen. */
  lossesSeen: number
  /** Missing at the closing count without having been seen dead. */
  lossesUnseen: number
  /** Counted at the close beyond what the book allows. */
  found: number
  atEnd: number
  endError: number
  /** False when the watch ends without a count: the close is then the book's. */
  isCounted: boolean
  /** Animals at risk: those who came or left are counted for the part of the interval that they were there. */
  atRisk: number
  entries: readonly LedgerEntry[]
}

const KINDS = ['count', 'loss', 'movedIn', 'movedOut', 'placed', 'culled']

function check(entries: readonly LedgerEntry[]): void {
  entries.forEach(({ day, kind, animals, standardError = 0 }, index) => {
    const at = `entries[${index}]`
    if (!KINDS.includes(kind))
      throw new ArgumentError({ argument: `${at}.kind`, value: kind, allowed: KINDS.join(', ') })
    assertAtLeast(`${at}.day`, day, 0)
    assertAtLeast(`${at}.standardError`, standardError, 0)
    if (kind === 'count' && standardError > 0) assertAtLeast(`${at}.animals`, animals, 0)
    else assertWhole(`${at}.animals`, animals)
  })
}

function sum(entries: readonly LedgerEntry[], ...kinds: LedgerEntry['kind'][]): number {
  return entries.reduce((total, { kind, animals }) => (kinds.includes(kind) ? total + animals : total), 0)
}

/** Came in less gone, entry by entry; on one day those who come, come first. */
const CHANGE = { count: 0, movedIn: 1, loss: -1, movedOut: -1, placed: -1, culled: -1 } as const

/** How many more left or died, by some day, than the opening count and those who came allow; 0 in a sound book. */
function shortfall(opening: LedgerEntry, entries: readonly LedgerEntry[]): { animals: number; day: number } {
  const arrivalsFirst = [...entries].sort((a, b) => a.day - b.day || CHANGE[b.kind] - CHANGE[a.kind])
  let balance = opening.animals
  let worst = { animals: 0, day: opening.day }
  for (const { day, kind, animals } of arrivalsFirst) {
    balance += CHANGE[kind] * animals
    if (-balance > worst.animals) worst = { animals: -balance, day }
  }
  return worst
}

type Span = { fromDay: number; toDay: number }

/** Part of the interval still to go; an interval within one day has no length, so half of it. */
function restOf({ fromDay, toDay }: Span, day: number): number {
  return toDay > fromDay ? (toDay - day) / (toDay - fromDay) : 0.5
}

/**
 * Animals at risk in an interval: who dies counts whole, who lives for the part of it that it was there. That is the
 * actuarial method with the days known; those who came are taken to die as often as the rest.
 */
function exposure(
  entries: readonly LedgerEntry[],
  { span, present, deaths, atEnd }: { span: Span; present: number; deaths: number; atEnd: number },
): number {
  const net = entries.reduce(
    (total, { day, kind, animals }) => (kind === 'loss' ? total : total + CHANGE[kind] * animals * restOf(span, day)),
    0,
  )
  const before = entries.reduce(
    (total, { day, kind, animals }) => (kind === 'movedIn' ? total + animals * (1 - restOf(span, day)) : total),
    0,
  )
  const stayed = deaths + atEnd
  const ofTheDead = stayed > 0 ? deaths * Math.min(1, before / stayed) : 0
  return Math.max(deaths, present + net + ofTheDead)
}

function closeInterval(
  opening: LedgerEntry,
  entries: readonly LedgerEntry[],
  closing: LedgerEntry | null,
): LedgerInterval {
  const toDay = closing?.day ?? entries.at(-1)?.day ?? opening.day
  const span = { fromDay: opening.day, toDay }
  const lossesSeen = sum(entries, 'loss')
  const gone = sum(entries, 'movedOut', 'placed', 'culled') + lossesSeen
  const book = opening.animals + sum(entries, 'movedIn') - gone
  const missing = shortfall(opening, entries)
  if (missing.animals > 0 && (opening.standardError ?? 0) === 0) {
    throw new ArgumentError({
      argument: `entries up to day ${missing.day}`,
      value: `${missing.animals} more gone than there were`,
      allowed: `no more than were counted on day ${opening.day} or came since`,
    })
  }
  const atEnd = closing?.animals ?? book + missing.animals
  const found = Math.max(missing.animals, atEnd - book)
  const lossesUnseen = book + found - atEnd
  const deaths = lossesSeen + lossesUnseen
  return {
    ...span,
    atStart: opening.animals,
    startError: opening.standardError ?? 0,
    movedIn: sum(entries, 'movedIn'),
    movedOut: sum(entries, 'movedOut'),
    placed: sum(entries, 'placed'),
    culled: sum(entries, 'culled'),
    lossesSeen,
    lossesUnseen,
    found,
    atEnd,
    endError: closing?.standardError ?? 0,
    isCounted: closing !== null,
    // Who is found was there uncounted.
    atRisk: exposure(entries, { span, present: opening.animals + found, deaths, atEnd }),
    entries,
  }
}

/** A full order, so that sums round alike however the book was written. */
function byDayThenKind(a: LedgerEntry, b: LedgerEntry): number {
  return a.day - b.day || KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || a.animals - b.animals
}

/** Throws unless there is a count, the counts fall on different days and no other entry comes before the first. */
function checkOrder(entries: readonly LedgerEntry[], counts: readonly LedgerEntry[]): void {
  const opening = counts[0]
  if (opening === undefined)
    throw new ArgumentError({ argument: 'entries', value: 'no count', allowed: 'at least one count, to begin with' })
  const early = entries.find(({ day }) => day < opening.day)
  if (early !== undefined) {
    throw new ArgumentError({ argument: 'day', value: early.day, allowed: `from the first count, day ${opening.day}` })
  }
  const twice = counts.find(({ day }, index) => counts[index + 1]?.day === day)
  if (twice !== undefined) {
    throw new ArgumentError({ argument: 'day', value: twice.day, allowed: 'one count a day; combine replicates first' })
  }
}

/**
 * The book of a group, count by count, whatever order its entries are given in. On the first count's day other entries
 * come after it; on the day of a later count they come before it. Animals are conserved:
 * atStart + movedIn + found = movedOut + placed + culled + lossesSeen + lossesUnseen + atEnd.
 * @throws ArgumentError for a missing first count, two counts on a day, a negative or fractional number, an entry
 * before the first count, or more animals gone than a head count left to go.
 */
export function bookOf(entries: readonly LedgerEntry[]): LedgerInterval[] {
  check(entries)
  const sorted = [...entries].sort(byDayThenKind)
  const counts = sorted.filter(({ kind }) => kind === 'count')
  checkOrder(sorted, counts)
  const others = sorted.filter(({ kind }) => kind !== 'count')
  const between = (after: number, to: number) => others.filter(({ day }) => day > after && day <= to)
  const book = counts.slice(1).map((closing, index) => {
    const from = counts[index]!
    // Entries of the opening day belong to the first interval.
    return closeInterval(from, between(index === 0 ? Number.NEGATIVE_INFINITY : from.day, closing.day), closing)
  })
  const last = counts.at(-1)!
  const rest = between(counts.length === 1 ? Number.NEGATIVE_INFINITY : last.day, Number.POSITIVE_INFINITY)
  return rest.length > 0 || book.length === 0 ? [...book, closeInterval(last, rest, null)] : book
}
