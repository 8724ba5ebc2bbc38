import type { Instant, PlainDate } from '@fryward/shared'

const formats = new Map<string, Intl.DateTimeFormat>()
function format(timeZone: string, name: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${timeZone} ${name}`
  const known = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone, ...options })
  formats.set(key, known)
  return known
}

/** A plain date has no zone: noon UTC formatted in UTC says the same date anywhere. */
const noonOf = (date: PlainDate) => new Date(`${date}T12:00:00Z`)

export const sayTime = (at: Instant | Date, timeZone: string): string =>
  format(timeZone, 'time', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(new Date(at))

/** The local date of an instant, as YYYY-MM-DD. */
export const toPlainDate = (at: Instant | Date, timeZone: string): PlainDate =>
  new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(new Date(at))

export const sayLongDate = (date: PlainDate): string =>
  format('UTC', 'long', { weekday: 'long', day: 'numeric', month: 'short' }).format(noonOf(date))

export const sayDate = (date: PlainDate): string =>
  format('UTC', 'short', { weekday: 'short', day: 'numeric', month: 'short' }).format(noonOf(date))

const dayNumber = (date: PlainDate) => Math.round(noonOf(date).getTime() / 86_400_000)

/** Midnights since then, as tasks number the days of a clutch: laid on Sunday, it is day 3 all Wednesday. */
export const daysSince = (at: Instant, today: PlainDate, timeZone: string): number =>
  Math.max(0, dayNumber(today) - dayNumber(toPlainDate(at, timeZone)))

/** "today", "yesterday", "tomorrow", a weekday within six days, else the short date. */
export function sayDay(date: PlainDate, today: PlainDate): string {
  const away = dayNumber(date) - dayNumber(today)
  if (away === 0) return 'today'
  if (away === -1) return 'yesterday'
  if (away === 1) return 'tomorrow'
  if (away > 1 && away < 7) return format('UTC', 'weekday', { weekday: 'long' }).format(noonOf(date))
  return sayDate(date)
}

/** The same at the head of a list: "Today", "Yesterday", "Mon 23 Nov". */
export function sayDayHeading(date: PlainDate, today: PlainDate): string {
  const day = sayDay(date, today)
  return `${day.charAt(0).toUpperCase()}${day.slice(1)}`
}

/** The night that began on this date, as people say it. */
export function sayNight(date: PlainDate, today: PlainDate): string {
  const day = sayDay(date, today)
  if (day === 'today') return 'tonight'
  if (day === 'yesterday') return 'last night'
  return `${day} night`
}

/** "07:40" on the day itself, "yesterday 07:40", "Thu 3 Nov 07:40". */
export function sayMoment(at: Instant | Date, now: Instant | Date, timeZone: string): string {
  const time = sayTime(at, timeZone)
  const day = sayDay(toPlainDate(at, timeZone), toPlainDate(now, timeZone))
  return day === 'today' ? time : `${day} ${time}`
}
