import type { Instant, PlainDate } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'
import { remembered, rememberedByTwo } from '../memo/remembered.ts'
import type { RoomSettings } from '../snapshot/room-snapshot.ts'
import { instantOf } from './elapsed.ts'

/** One local day of a room as instants. A round that a clock change skips starts when the clocks have jumped. */
export type HusbandryDay = {
  date: PlainDate
  /** First instant of the local date; midnight does not exist in every zone on every day. */
  startsAt: Instant
  endsAt: Instant
  rounds: { id: string; name: string; startsAt: Instant }[]
  lightsOnAt: Instant
  lightsOffAt: Instant
}

type Clock = Pick<RoomSettings, 'timeZone' | 'rounds' | 'lightsOnAt' | 'lightsOffAt'>

// Calendars are asked the same few things thousands of times a day, and a time zone answers slowly.
const days = remembered<HusbandryDay>(2000)
const daysOfRoom = new WeakMap<Clock, Map<PlainDate, HusbandryDay>>()
const localDates = remembered<PlainDate>(20_000)
const addedDays = rememberedByTwo<PlainDate>(2000)
const spans = rememberedByTwo<number>(2000)

export function husbandryDay({ room, date }: { room: Clock; date: PlainDate }): HusbandryDay {
  const known = daysOfRoom.get(room) ?? new Map<PlainDate, HusbandryDay>()
  daysOfRoom.set(room, known)
  const day = known.get(date) ?? dayAsWritten(room, date)
  known.set(date, day)
  return day
}

/** Rooms that are read anew are other objects of the same hours. */
function dayAsWritten(room: Clock, date: PlainDate): HusbandryDay {
  const { timeZone, rounds, lightsOnAt, lightsOffAt } = room
  return days(JSON.stringify([date, timeZone, rounds, lightsOnAt, lightsOffAt]), () => workOutDay(room, date))
}

function workOutDay(room: Clock, date: PlainDate): HusbandryDay {
  const day = Temporal.PlainDate.from(date)
  const at = (time: string): Instant =>
    toInstant(day.toZonedDateTime({ timeZone: room.timeZone, plainTime: Temporal.PlainTime.from(time) }))
  return {
    date,
    startsAt: toInstant(day.toZonedDateTime(room.timeZone)),
    endsAt: toInstant(day.add({ days: 1 }).toZonedDateTime(room.timeZone)),
    rounds: room.rounds.map((round) => ({ id: round.id, name: round.name, startsAt: at(round.at) })),
    lightsOnAt: at(room.lightsOnAt),
    lightsOffAt: at(room.lightsOffAt),
  }
}

/** Noon of a local date, as an instant. */
export const noonOf = (room: Pick<Clock, 'timeZone'>, date: PlainDate): Instant => timeOf(room, { date, time: '12:00' })

/** A time of day, HH:MM, on a local date, as an instant. One that a clock change leaves out is taken an hour later. */
export function timeOf(
  { timeZone }: Pick<Clock, 'timeZone'>,
  { date, time }: { date: PlainDate; time: string },
): Instant {
  const plainTime = Temporal.PlainTime.from(time)
  return toInstant(Temporal.PlainDate.from(date).toZonedDateTime({ timeZone, plainTime }))
}

/** The room's local time of day at an instant, as HH:MM. */
export const localTime = ({ timeZone, at }: { timeZone: string; at: Instant }): string =>
  Temporal.Instant.from(at).toZonedDateTimeISO(timeZone).toPlainTime().toString({ smallestUnit: 'minute' })

/** The room's local date at an instant. */
export function localDate({ timeZone, at }: { timeZone: string; at: Instant }): PlainDate {
  // Since 1972 every zone is whole minutes from UTC: a minute lies within one date.
  return localDates(`${timeZone} ${at.slice(0, 'YYYY-MM-DDTHH:MM'.length)}`, () =>
    Temporal.Instant.from(at).toZonedDateTimeISO(timeZone).toPlainDate().toString(),
  )
}

export function addDays(date: PlainDate, days: number): PlainDate {
  return addedDays(date, days, () => Temporal.PlainDate.from(date).add({ days }).toString())
}

/** Whole days from one date to another; negative when `to` is earlier. */
export function daysBetween(from: PlainDate, to: PlainDate): number {
  return spans(
    from,
    to,
    () => Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days,
  )
}

function toInstant(at: Temporal.ZonedDateTime): Instant {
  return instantOf(at.epochMilliseconds)
}
