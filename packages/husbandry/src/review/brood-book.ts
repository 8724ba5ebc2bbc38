import type { Id, Outcome, PlainDate } from '@fryward/shared'
import type { LedgerEntry } from '@fryward/survival'
import { addDays, daysBetween } from '../calendar/husbandry-day.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import { factList } from '../snapshot/live-snapshot.ts'
import { batchBookOf } from '../state/batch-state.ts'
import { bookNumber } from '../state/book.ts'
import { bookLines, type WrittenLine } from '../state/book-lines.ts'
import { groupBookOf } from '../state/group-state.ts'
import type { Brood, BroodVessel } from './broods.ts'
import { type Counted, countedOf, exactly, shifted, together } from './counting-error.ts'
import { dateIn, type ReviewRoom } from './review-room.ts'

/** Animals that left a brood on a date, or died; never counted twice when they only went from one of its vessels to another. */
export type Departure = {
  on: PlainDate
  kind: 'loss' | Outcome | 'moved' | 'mixed'
  number: number
  vesselId: Id
  cause: string | null
}

/** Young of a brood that went from a larval batch to grow-out, into a group of their own or to others. */
export type Settling = { on: PlainDate; number: number }

export type BroodBook = {
  /** Day 0: the morning after the first hatch night whose larvae went into a batch; null while there is none. */
  bornOn: PlainDate | null
  departures: readonly Departure[]
  settlings: readonly Settling[]
  /** Dates by whose end somebody had said how many there were. */
  countedOn: readonly PlainDate[]
  /** By the book at the end of a date: what was counted last, less what left and died since; null while nobody has said. */
  numberOn: (date: PlainDate) => Counted | null
  /** The same of some of its vessels. */
  numberIn: (vessels: readonly BroodVessel[], date: PlainDate) => Counted | null
}

type Asked = { room: ReviewRoom; brood: Brood }
type Dated = WrittenLine & { on: PlainDate }

/** Morning after a hatch night. */
export const morningAfter = (hatchedOn: PlainDate): PlainDate => addDays(hatchedOn, 1)

export const hatchesOf = ({ room, brood }: Asked): FactOf<'hatch'>[] =>
  brood.clutches.flatMap(({ id }) => factList(room, `hatch ${id}`) as readonly FactOf<'hatch'>[])

const isBefore = (vessel: BroodVessel, at: string) => vessel.mixedAt === null || at < vessel.mixedAt

/** All that is written of a brood's young from their hatch on, over all vessels that held them alone. */
export function broodBook(asked: Asked): BroodBook {
  const hatches = hatchesOf(asked).filter(({ data }) => data.batchId !== undefined)
  const bornOn = hatches.map(({ data }) => morningAfter(data.hatchedOn)).sort()[0] ?? null
  const vessels = asked.brood.vessels.map((vessel) => vesselBook(asked, vessel))
  const departures = vessels.flatMap((vessel) => vessel.departures).sort((a, b) => (a.on < b.on ? -1 : 1))
  const numberIn = (chosen: readonly BroodVessel[], date: PlainDate): Counted | null => {
    if (bornOn === null || date < bornOn) return null
    const there = vessels.filter((vessel) => chosen.some(({ id }) => id === vessel.id) && vessel.isThereOn(date))
    const known = there.map((vessel) => vessel.numberOn(date)).filter((number) => number !== null)
    return known.length < there.length || known.length === 0 ? null : together(known)
  }
  // Every stage asks about the same few dates.
  const numbers = new Map<PlainDate, { number: Counted | null }>()
  const hatchDates = hatches.every(({ data }) => data.larvae === undefined) || bornOn === null ? [] : [bornOn]
  return {
    bornOn,
    departures,
    settlings: vessels.flatMap(({ settlings }) => settlings),
    countedOn: [...new Set([...hatchDates, ...vessels.flatMap(({ countedOn }) => countedOn)])].sort(),
    numberOn: (date) => {
      const known = numbers.get(date) ?? { number: numberIn(asked.brood.vessels, date) }
      numbers.set(date, known)
      return known.number
    },
    numberIn,
  }
}

type VesselBook = {
  id: Id
  departures: Departure[]
  settlings: Settling[]
  countedOn: PlainDate[]
  isThereOn: (date: PlainDate) => boolean
  numberOn: (date: PlainDate) => Counted | null
}

function vesselBook(asked: Asked, vessel: BroodVessel): VesselBook {
  const { room } = asked
  const lines = bookLines(room, vessel.id)
    .filter(({ at }) => isBefore(vessel, at))
    .map((line): Dated => ({ ...line, on: dateIn(room, line.at) }))
  const numberOn = numberOnOf(asked, { vessel, lines })
  const endsOn = endOf(room, vessel)
  const first = lines.find(({ way }) => way === 'begin' || way === 'in')
  const counted = vessel.kind === 'larval_batch' ? 'larvae' : 'juveniles'
  const countedOn = lines.flatMap(({ way, of, on }) => (way === 'count' && of === counted ? [on] : []))
  const gone = departuresOf(asked, vessel)
  return {
    id: vessel.id,
    departures: [...gone.departures, ...mixedAway({ room, vessel, lines })],
    settlings: gone.settlings,
    // Ended, it is known to be empty.
    countedOn: endsOn === null ? countedOn : [...countedOn, endsOn],
    isThereOn: (date) => first !== undefined && (first.way === 'begin' || first.on <= date),
    numberOn: (date) => (endsOn !== null && date >= endsOn ? exactly(0) : numberOn(date)),
  }
}

/** The date on which a vessel was ended while it held this brood alone. */
function endOf(room: ReviewRoom, { id, mixedAt }: BroodVessel): PlainDate | null {
  if (mixedAt !== null) return null
  const endedAt = [...room.batches, ...room.groups].find((vessel) => vessel.id === id)?.endedAt ?? null
  return endedAt === null ? null : dateIn(room, endedAt)
}

type Written = { vessel: BroodVessel; lines: readonly Dated[] }

function numberOnOf({ room, brood }: Asked, { vessel, lines }: Written): VesselBook['numberOn'] {
  const { id, kind, mixedAt } = vessel
  const mixedOn = mixedAt === null ? null : dateIn(room, mixedAt)
  const hatches = hatchesOf({ room, brood }).filter(({ data }) => data.batchId === id)
  const bookOf = kind === 'larval_batch' ? batchBookOf : groupBookOf
  const of = kind === 'larval_batch' ? 'larvae' : 'juveniles'
  return (date) => {
    if (mixedOn !== null && date >= mixedOn) return exactly(0)
    // A hatch that was written down late was there from its morning on.
    const come = hatches.filter(({ data }) => morningAfter(data.hatchedOn) <= date).length
    const begun = lines.filter(({ way }) => way === 'begin').slice(0, come)
    const until = [...begun, ...lines.filter(({ way, on }) => way !== 'begin' && on <= date)]
    const number = bookNumber(bookOf(until))
    if (number === null) return null
    const last = until.findLast((line) => line.way === 'count' && line.of === of)
    const anchor = last
      ? countErrorOf(room, { id, last })
      : together(begun.map((line) => countedOf('larvae', [line.number ?? 0])))
    return shifted(anchor, Math.round(number))
  }
}

function countErrorOf(room: ReviewRoom, { id, last }: { id: Id; last: Dated }): Counted {
  const counts = factList(room, `count ${id}`) as readonly FactOf<'count'>[]
  const fact = counts.findLast(({ at, data }) => at === last.at && data.of === last.of)
  return countedOf(last.of ?? 'juveniles', fact?.data.animals ?? [last.number ?? 0])
}

/** When others came to a vessel, whoever was in it can be followed no further: they left the watch alive. */
function mixedAway({ room, vessel, lines }: Written & { room: ReviewRoom }): Departure[] {
  if (vessel.mixedAt === null) return []
  const number = bookNumber((vessel.kind === 'larval_batch' ? batchBookOf : groupBookOf)(lines))
  if (number !== null && number < 1) return []
  const on = dateIn(room, vessel.mixedAt)
  // Nobody has said how many: that they left the watch is known all the same.
  return [{ on, kind: 'mixed', number: Math.round(number ?? 0), vesselId: vessel.id, cause: null }]
}

function departuresOf({ room, brood }: Asked, vessel: BroodVessel): { departures: Departure[]; settlings: Settling[] } {
  const departures: Departure[] = []
  const settlings: Settling[] = []
  const about = factList(room, `about ${vessel.id}`).filter(({ at }) => isBefore(vessel, at))
  const groups = new Set(room.groups.map(({ id }) => id))
  for (const fact of about) {
    const base = { on: dateIn(room, fact.at), vesselId: vessel.id, cause: null }
    if (fact.kind === 'loss') departures.push({ ...base, kind: 'loss', ...lossOf(fact) })
    if (fact.kind === 'outcome') departures.push({ ...base, kind: fact.data.outcome, number: fact.data.number })
    if (fact.kind !== 'transfer') continue
    const { number, toSubjectId } = fact.data
    if (vessel.kind === 'larval_batch' && groups.has(toSubjectId)) settlings.push({ on: base.on, number })
    const to = brood.vessels.find(({ id }) => id === toSubjectId)
    if (!to || !isBefore(to, fact.at)) departures.push({ ...base, kind: to ? 'mixed' : 'moved', number })
  }
  return { departures, settlings }
}

function lossOf({ data }: Extract<Fact, { kind: 'loss' }>): { number: number; cause: string | null } {
  return { number: data.number, cause: data.cause?.trim() || null }
}

/** Age in days at the end of a date; what was told of as before day 0 was on it. */
export const ageOn = (bornOn: PlainDate, date: PlainDate): number => Math.max(0, daysBetween(bornOn, date))

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
    const number = date > opening.on && date <= room.today ? numberOn(date) : null
    if (number !== null) entries.push(countEntry(ageOn(bornOn, date), number))
  }
  for (const { on, kind, number } of book.departures)
    if (opening.isOfMorning || on > opening.on)
      entries.push({ day: ageOn(bornOn, on), kind: ledgerKinds[kind], animals: number })
  for (const { data } of hatchesOf({ room, brood }))
    if (data.batchId !== undefined && data.larvae !== undefined && morningAfter(data.hatchedOn) > opening.on)
      entries.push({ day: ageOn(bornOn, morningAfter(data.hatchedOn)), kind: 'movedIn', animals: data.larvae })
  return withOverdrawn(entries)
}

type Opening = { on: PlainDate; counted: Counted; isOfMorning: boolean }

/** The larvae of the first morning, before anything happened to them; else what was counted first, by the end of its day. */
function openingOf({ room, brood }: Asked, { bornOn, countedOn, numberOn }: BroodBook): Opening | null {
  const larvae = hatchesOf({ room, brood })
    .filter(({ data }) => data.batchId !== undefined && morningAfter(data.hatchedOn) === bornOn)
    .flatMap(({ data }) => (data.larvae === undefined ? [] : [countedOf('larvae', [data.larvae])]))
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
  const counts = sorted.filter(({ kind }) => kind === 'count').sort((a, b) => a.day - b.day)
  return sorted.map((entry) => {
    if (entry.kind !== 'count') return entry
    const next = counts.find(({ day }) => day > entry.day)?.day ?? Number.POSITIVE_INFINITY
    let balance = entry.animals
    let overdrawn = 0
    for (const { day, kind, animals } of sorted) {
      if (kind === 'count' || day <= entry.day || day > next) continue
      balance += changes[kind] * animals
      overdrawn = Math.max(overdrawn, -balance)
    }
    return { ...entry, standardError: Math.max(entry.standardError ?? 0, overdrawn) }
  })
}
