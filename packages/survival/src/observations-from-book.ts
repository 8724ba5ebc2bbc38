import { bookOf, type LedgerEntry, type LedgerInterval } from './ledger.ts'
import type { Observation } from './observation.ts'

/** Animals that came under watch together and are still there; `enteredAt` is undefined for the start of all time. */
type Lot = { enteredAt: number | undefined; animals: number }

/** Who comes on a day is there from half a day before, so that a death on that day counts. */
const BEFORE_THE_DAY = 0.5

/** Estimated counts are fractional and leave rounding behind; far under one animal. */
const NOBODY = 1e-9

function newLot(day: number, animals: number): Lot {
  return { enteredAt: day > BEFORE_THE_DAY ? day - BEFORE_THE_DAY : undefined, animals }
}

/** Takes animals out of the lots, longest there first, and says how many from which. */
function takeFrom(lots: Lot[], animals: number): Lot[] {
  const taken: Lot[] = []
  let wanted = animals
  for (const lot of lots) {
    const part = Math.min(lot.animals, wanted)
    if (part > NOBODY) taken.push({ enteredAt: lot.enteredAt, animals: part })
    lot.animals -= part
    wanted -= part
  }
  return taken
}

function observe({ enteredAt, animals }: Lot, { time, event }: { time: number; event: boolean }): Observation {
  return { time, event, weight: animals, ...(enteredAt === undefined ? {} : { enteredAt }) }
}

/** Dated exits, then the deaths that only the closing count shows, of whoever is left. */
function followInterval(lots: Lot[], { fromDay, toDay, found, lossesUnseen, entries }: LedgerInterval): Observation[] {
  if (found > 0) lots.push(newLot(fromDay, found))
  const arrivals = entries.filter(({ kind }) => kind === 'movedIn')
  lots.push(...arrivals.map(({ day, animals }) => newLot(day, animals)))
  const dated = entries
    .filter(({ kind }) => kind !== 'movedIn')
    .flatMap(({ day, kind, animals }) =>
      takeFrom(lots, animals).map((lot) => observe(lot, { time: day, event: kind === 'loss' })),
    )
  const unseen = takeFrom(lots, lossesUnseen).map((lot) => {
    const since = Math.max(fromDay, lot.enteredAt ?? fromDay)
    return observe(lot, { time: (since + toDay) / 2, event: true })
  })
  return [...dated, ...unseen]
}

/**
 * A group's book as observations for kaplanMeier and logRank, weighted by animals; days are those of the entries.
 * Deaths seen fall on their day; deaths that only a count shows, half-way since the count before or since the animal
 * came (common practice). Who left alive, or lives at the end, is censored. Who came is under watch from that day on,
 * and what a count found beyond the book from the count before.
 * @throws ArgumentError as for lifeTable.
 */
export function observationsFromBook({ entries }: { entries: readonly LedgerEntry[] }): Observation[] {
  const book = bookOf(entries)
  const first = book[0]!
  const lots = [newLot(first.fromDay, first.atStart)]
  const left = book.flatMap((interval) => followInterval(lots, interval))
  const alive = lots.filter(({ animals }) => animals > NOBODY)
  return [...left, ...alive.map((lot) => observe(lot, { time: book.at(-1)!.toDay, event: false }))]
}
