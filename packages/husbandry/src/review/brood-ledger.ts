import type { PlainDate } from '@fryward/shared'
import type { LedgerEntry } from '@fryward/survival'
import { bookLines } from '../state/book-lines.ts'
import { ageOn, type BroodBook, type Departure } from './brood-book.ts'
import type { Brood } from './broods.ts'
import { type Counted, countedOf, together } from './counting-error.ts'
import { dateIn, type ReviewRoom } from './review-room.ts'

type Asked = { room: ReviewRoom; brood: Brood }

const ledgerKinds = {
  ...{ loss: 'loss', placed: 'placed', kept: 'placed', culled: 'culled', moved: 'movedOut', mixed: 'movedOut' },
} as const satisfies Record<Departure['kind'], LedgerEntry['kind']>

/**
 * The brood's book as the survival package reads it: days of age, counts of the whole brood, what came and left. It begins
 * with the first number that anybody wrote down: the larvae that hatched, or a count later on. Null while nobody has.
 */
export function ledgerOf({ room, brood }: Asked, book: BroodBook): LedgerEntry[] | null {
  const { bornOn, numberOn } = book
  const opening = openingOf({ room, brood }, book)
  if (bornOn === null || opening === null) return null
  const entries: LedgerEntry[] = [countEntry(ageOn(bornOn, opening.on), opening.counted)]
  for (const date of book.countedOn) {
    const number = date > opening.on ? numberOn(date) : null
    if (number !== null) entries.push(countEntry(ageOn(bornOn, date), number))
  }
  for (const { on, kind, number } of book.departures)
    if (opening.isOfMorning || on > opening.on)
      entries.push({ day: ageOn(bornOn, on), kind: ledgerKinds[kind], animals: number })
  for (const { on, told } of book.nights)
    for (const animals of on > opening.on ? told : [])
      entries.push({ day: ageOn(bornOn, on), kind: 'movedIn', animals })
  return withOverdrawn(entries)
}

type Opening = { on: PlainDate; counted: Counted; isOfMorning: boolean }

/** The larvae of the first morning, before anything happened to them; else what was counted first, by the end of its day. */
function openingOf({ room, brood }: Asked, { bornOn, nights, countedOn, numberOn }: BroodBook): Opening | null {
  const larvae = nights
    .filter((night) => night.on === bornOn)
    .flatMap(({ told }) => told.map((number) => countedOf('larvae', [number])))
  const on = countedOn.find((date) => numberOn(date) !== null)
  if (on === undefined) return null
  if (on === bornOn && larvae.length > 0 && !isRecountedOn({ room, brood }, on))
    return { on, counted: together(larvae), isOfMorning: true }
  const counted = numberOn(on)
  return counted && { on, counted, isOfMorning: false }
}

const isRecountedOn = ({ room, brood }: Asked, on: PlainDate): boolean =>
  brood.vessels.some((vessel) =>
    bookLines(room, vessel.id).some((line) => line.way === 'count' && dateIn(room, line.at) === on),
  )

const countEntry = (day: number, { number, standardError }: Counted): LedgerEntry => ({
  day,
  kind: 'count',
  animals: number,
  standardError,
})

const changes = { count: 0, movedIn: 1, loss: -1, movedOut: -1, placed: -1, culled: -1 } as const

/** A count that more animals left than it said was off by at least as many: that is its error then. */
function withOverdrawn(entries: readonly LedgerEntry[]): LedgerEntry[] {
  const sorted = [...entries].sort(
    (a, b) => a.day - b.day || Number(b.kind === 'movedIn') - Number(a.kind === 'movedIn'),
  )
  const counts = sorted.filter(({ kind }) => kind === 'count')
  return sorted.map((entry) => {
    if (entry.kind !== 'count') return entry
    const next = counts.find(({ day }) => day > entry.day)?.day ?? Number.POSITIVE_INFINITY
    // What is told of the first count's day came after it, of another's before.
    const isSince = (day: number) => day > entry.day || (day === entry.day && entry === counts[0])
    let balance = entry.animals
    let overdrawn = 0
    for (const { day, kind, animals } of sorted) {
      if (kind === 'count' || !isSince(day) || day > next) continue
      balance += changes[kind] * animals
      overdrawn = Math.max(overdrawn, -balance)
    }
    return { ...entry, standardError: Math.max(entry.standardError ?? 0, overdrawn) }
  })
}
