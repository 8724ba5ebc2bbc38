import type { Id, Outcome, PlainDate } from '@fryward/shared'
import { addDays, daysBetween } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
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
  /** Of young in grow-out, or on their way to it; the others left from among the larvae. */
  hasSettled: boolean
  cause: string | null
}

export const leavesAlive = ({ kind }: Departure): boolean => kind !== 'loss'

/** Larvae of one night in one tank, on the morning after; of two clutches one number may stand for both, or nobody said any. */
export type Night = { on: PlainDate; told: number[] }

/** Young of a brood that went from a larval batch to grow-out, into a group of their own or to others. */
export type Settling = { on: PlainDate; number: number }

export type BroodBook = {
  /** Day 0: the morning after the first hatch night whose larvae went into a batch, of their own if any did; null while there is none. */
  bornOn: PlainDate | null
  /** Of larvae that went into a batch of their own. */
  nights: readonly Night[]
  departures: readonly Departure[]
  settlings: readonly Settling[]
  /** Dates by whose end somebody had said how many there were. */
  countedOn: readonly PlainDate[]
  /** By the book at the end of a date: what was counted last, less what left and died since; null while nobody has said. */
  numberOn: (date: PlainDate) => Counted | null
  /** The same of some of its vessels. */
  numberIn: (vessels: readonly BroodVessel[], date: PlainDate) => Counted | null
}

/** What a vessel holds, by which its counts are known among those of others, and how its book is kept. */
const animals = { larval_batch: 'larvae', juvenile_group: 'juveniles' } as const
const books = { larval_batch: batchBookOf, juvenile_group: groupBookOf }

type Asked = { room: ReviewRoom; brood: Brood }
type Dated = WrittenLine & { on: PlainDate }

/** Morning after a hatch night. */
const morningAfter = (hatchedOn: PlainDate): PlainDate => addDays(hatchedOn, 1)

export const hatchesOf = ({ room, brood }: Asked): FactOf<'hatch'>[] =>
  brood.clutches.flatMap(({ id }) => factList(room, `hatch ${id}`) as readonly FactOf<'hatch'>[])

const isBefore = (vessel: BroodVessel, at: string) => vessel.mixedAt === null || at < vessel.mixedAt

/** Whether the larvae of a hatch went into a batch that held this brood alone: others can be followed no further. */
export const isFollowed = (brood: Brood, { at, data }: FactOf<'hatch'>): boolean =>
  brood.vessels.some((vessel) => vessel.id === data.batchId && isBefore(vessel, at))

export function nightsOf(hatches: readonly FactOf<'hatch'>[]): Night[] {
  const nights = new Map<string, Night>()
  for (const { data, subjectId } of hatches) {
    const place = `${data.hatchedOn} ${data.batchId ?? subjectId}`
    const night = nights.get(place) ?? { on: morningAfter(data.hatchedOn), told: [] }
    if (data.larvae !== undefined) night.told.push(data.larvae)
    nights.set(place, night)
  }
  return [...nights.values()].sort((a, b) => (a.on < b.on ? -1 : 1))
}

/** All that is written of a brood's young from their hatch on, over all vessels that held them alone. */
export function broodBook(asked: Asked): BroodBook {
  const raised = hatchesOf(asked).filter(({ data }) => data.batchId !== undefined)
  const nights = nightsOf(raised.filter((hatch) => isFollowed(asked.brood, hatch)))
  const bornOn = [...nights, ...nightsOf(raised)][0]?.on ?? null
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
  const hatchDates = bornOn === null || nights.every(({ told }) => told.length === 0) ? [] : [bornOn]
  return {
    bornOn,
    nights,
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
  const lines = linesOf(asked, vessel)
  const numberOn = numberOnOf(room, { vessel, lines })
  const endsOn = endOf(room, vessel)
  const firstOn = lines.flatMap(({ way, on }) => (way === 'begin' || way === 'in' ? [on] : [])).sort()[0]
  const countedOn = lines.filter(({ of }) => of === animals[vessel.kind]).map(({ on }) => on)
  const gone = departuresOf(asked, vessel)
  return {
    id: vessel.id,
    departures: [...gone.departures, ...mixedAway({ room, vessel, lines })],
    settlings: gone.settlings,
    // Ended, it is known to be empty.
    countedOn: endsOn === null ? countedOn : [...countedOn, endsOn],
    isThereOn: (date) => firstOn !== undefined && firstOn <= date,
    numberOn: (date) => (endsOn !== null && date >= endsOn ? exactly(0) : numberOn(date)),
  }
}

/** What is written of a vessel while it held this brood alone; a hatch was there from its morning on, however late it was written. */
function linesOf({ room, brood }: Asked, vessel: BroodVessel): Dated[] {
  const begun = hatchesOf({ room, brood })
    .filter(({ at, data }) => data.batchId === vessel.id && isBefore(vessel, at))
    .map(({ at, kind, data }): Dated => {
      const number = data.larvae ?? null
      return { subjectId: vessel.id, way: 'begin', number, at, kind, on: morningAfter(data.hatchedOn) }
    })
  const since = bookLines(room, vessel.id)
    .filter(({ at, way }) => way !== 'begin' && isBefore(vessel, at))
    .map((line): Dated => ({ ...line, on: dateIn(room, line.at) }))
  return [...begun, ...since]
}

/** The date on which a vessel was ended while it held this brood alone. */
function endOf(room: ReviewRoom, { id, mixedAt }: BroodVessel): PlainDate | null {
  if (mixedAt !== null) return null
  const endedAt = [...room.batches, ...room.groups].find((vessel) => vessel.id === id)?.endedAt ?? null
  return endedAt === null ? null : dateIn(room, endedAt)
}

type Written = { vessel: BroodVessel; lines: readonly Dated[] }

function numberOnOf(room: ReviewRoom, { vessel, lines }: Written): VesselBook['numberOn'] {
  const { id, kind, mixedAt } = vessel
  const mixedOn = mixedAt === null ? null : dateIn(room, mixedAt)
  return (date) => {
    if (mixedOn !== null && date >= mixedOn) return exactly(0)
    const until = lines.filter(({ on }) => on <= date)
    const number = bookNumber(books[kind](until))
    if (number === null) return null
    const last = until.findLast(({ of }) => of === animals[kind])
    const hatched = until.flatMap(({ way, at, number: larvae }) =>
      way === 'begin' && larvae !== null && (!last || at > last.at) ? [countedOf('larvae', [larvae])] : [],
    )
    return shifted(together(last ? [countErrorOf(room, { id, last }), ...hatched] : hatched), Math.round(number))
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
  const number = bookNumber(books[vessel.kind](lines))
  if (number !== null && number < 1) return []
  const on = dateIn(room, vessel.mixedAt)
  // Nobody has said how many: that they left the watch is known all the same.
  const hasSettled = vessel.kind === 'juvenile_group'
  return [{ on, kind: 'mixed', number: Math.round(number ?? 0), vesselId: vessel.id, hasSettled, cause: null }]
}

function departuresOf({ room, brood }: Asked, vessel: BroodVessel): { departures: Departure[]; settlings: Settling[] } {
  const departures: Departure[] = []
  const settlings: Settling[] = []
  const about = factList(room, `about ${vessel.id}`).filter(({ at }) => isBefore(vessel, at))
  const groups = new Set(room.groups.map(({ id }) => id))
  for (const fact of about) {
    const hasSettled = vessel.kind === 'juvenile_group'
    const base = { on: dateIn(room, fact.at), vesselId: vessel.id, hasSettled, cause: null }
    if (fact.kind === 'loss')
      departures.push({ ...base, kind: 'loss', number: fact.data.number, cause: fact.data.cause || null })
    if (fact.kind === 'outcome') departures.push({ ...base, kind: fact.data.outcome, number: fact.data.number })
    if (fact.kind !== 'transfer') continue
    const { number, toSubjectId } = fact.data
    const goesToGrowOut = groups.has(toSubjectId)
    if (!hasSettled && goesToGrowOut) settlings.push({ on: base.on, number })
    const to = brood.vessels.find(({ id }) => id === toSubjectId)
    if (!to || !isBefore(to, fact.at))
      departures.push({ ...base, kind: to ? 'mixed' : 'moved', number, hasSettled: hasSettled || goesToGrowOut })
  }
  return { departures, settlings }
}

/** Age in days at the end of a date; what was told of as before day 0 was on it. */
export const ageOn = (bornOn: PlainDate, date: PlainDate): number => Math.max(0, daysBetween(bornOn, date))
