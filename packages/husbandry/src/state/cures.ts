import type { CureChange, PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { dateOf } from './day-facts.ts'

type Kind = CureChange['kind']
/** What a room chose so that food lasts, with the fact that says so. */
export type Cure<K extends Kind = Kind> = { fact: FactOf<'cure'>; change: Extract<CureChange, { kind: K }> }

/** As far as a plan looks ahead: what was chosen on it holds for those days. */
const holdsForDays = 21
/** A day late a culture is still worth starting, and a parcel may come; a week late it is another question. common practice */
const lateDays = 7

/** What the room chose so that food lasts and has neither done nor outlived by a day, oldest first. */
export function curesInForce(snapshot: RoomSnapshot, day: HusbandryDay): Cure[] {
  return factsOf(snapshot, 'cure', snapshot.room.id)
    .filter(({ at }) => at < day.endsAt)
    .map((fact): Cure => ({ fact, change: fact.data.change }))
    .filter((cure) => isWanted(snapshot, cure, day))
}

/** Those of one kind. */
export function curesOf<K extends Kind>(snapshot: RoomSnapshot, kind: K, day: HusbandryDay): Cure<K>[] {
  // Each kind stands beside its own change, which the type of a union cannot say.
  return curesInForce(snapshot, day).filter((cure) => cure.change.kind === kind) as unknown as Cure<K>[]
}

function isWanted(snapshot: RoomSnapshot, { fact, change }: Cure, { date }: HusbandryDay): boolean {
  if (change.kind === 'start_culture')
    return isWithin(change.onDate, date) && !isStarted(snapshot, fact, change.cultureId)
  if (change.kind === 'buy_in') return isWithin(change.onDate, date) && !isStarted(snapshot, fact, null)
  return daysBetween(dateOf(snapshot, fact.at), date) < holdsForDays
}

const isWithin = (onDate: PlainDate, date: PlainDate): boolean => daysBetween(onDate, date) < lateDays

/** A rotifer culture was begun since, out of that one, or out of none of this room. */
const isStarted = (snapshot: RoomSnapshot, { at }: FactOf<'cure'>, parentCultureId: string | null): boolean =>
  snapshot.cultures.some(
    (culture) => culture.kind === 'rotifer' && culture.startedAt > at && culture.parentCultureId === parentCultureId,
  )
