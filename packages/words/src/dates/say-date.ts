import type { Instant, PlainDate } from '@fryward/shared'
import type { NumberVoice, Voice } from '../voice.ts'
import { daysBetween, noonOf } from './day-arithmetic.ts'
import { mannerOf, partsOf } from './formats.ts'
import { sayTime } from './say-time.ts'

const partsOfDate = (date: PlainDate, { locale }: NumberVoice, options: Intl.DateTimeFormatOptions) =>
  partsOf(noonOf(date), { locale, timeZone: 'UTC', options: { day: 'numeric', month: 'short', ...options } })

function dayAndMonth(part: (name: 'day' | 'month') => string, { locale }: NumberVoice): string {
  const [day, month] = [part('day'), part('month')]
  return mannerOf(locale).isMonthFirst ? `${month} ${day}` : `${day} ${month}`
}

function withWeekday(date: PlainDate, weekday: 'short' | 'long', voice: NumberVoice): string {
  const part = partsOfDate(date, voice, { weekday })
  const between = mannerOf(voice.locale).isMonthFirst ? ', ' : ' '
  return `${part('weekday')}${between}${dayAndMonth(part, voice)}`
}

/** "Thu 26 Nov", or "Thu, Nov 26" where the month comes first. */
export const sayDate = (date: PlainDate, voice: NumberVoice): string => withWeekday(date, 'short', voice)

/** "Thursday 26 Nov". */
export const sayLongDate = (date: PlainDate, voice: NumberVoice): string => withWeekday(date, 'long', voice)

/** "26 Nov", for an axis. */
export const sayDayMonth = (date: PlainDate, voice: NumberVoice): string =>
  dayAndMonth(partsOfDate(date, voice, {}), voice)

/** "Thu 26", for an axis. */
export function sayWeekdayDay(date: PlainDate, voice: NumberVoice): string {
  const part = partsOfDate(date, voice, { weekday: 'short' })
  return `${part('weekday')} ${part('day')}`
}

export const sayWeekday = (date: PlainDate, voice: NumberVoice): string =>
  partsOfDate(date, voice, { weekday: 'long' })('weekday')

const isoDates = new Map<string, Intl.DateTimeFormat>()
/** The local date of an instant, as YYYY-MM-DD. */
export function toPlainDate(at: Instant | Date, timeZone: string): PlainDate {
  const format =
    isoDates.get(timeZone) ??
    new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' })
  isoDates.set(timeZone, format)
  return format.format(new Date(at))
}

/** Midnights since then, as tasks number the days of a clutch: laid on Sunday, it is day 3 all Wednesday. */
export const daysSince = (at: Instant, today: PlainDate, timeZone: string): number =>
  Math.max(0, daysBetween(toPlainDate(at, timeZone), today))

/** "today", "yesterday", "tomorrow", a weekday within six days, else the short date. */
export function sayDay(date: PlainDate, today: PlainDate, voice: NumberVoice): string {
  const away = daysBetween(today, date)
  if (away === 0) return 'today'
  if (away === -1) return 'yesterday'
  if (away === 1) return 'tomorrow'
  return away > 1 && away < 7 ? sayWeekday(date, voice) : sayDate(date, voice)
}

/** The same at the head of a list: "Today", "Yesterday", "Mon 23 Nov". */
export function sayDayHeading(date: PlainDate, today: PlainDate, voice: NumberVoice): string {
  const day = sayDay(date, today, voice)
  return `${day.charAt(0).toUpperCase()}${day.slice(1)}`
}

/** Over a day's list: "Thursday 26 Nov"; the day before and after by those names too. */
export function sayDayTitle(date: PlainDate, today: PlainDate, voice: NumberVoice): string {
  const long = sayLongDate(date, voice)
  return Math.abs(daysBetween(today, date)) === 1 ? `${sayDayHeading(date, today, voice)}, ${long}` : long
}

/** The night that began on this date, as people say it. */
export function sayNight(date: PlainDate, today: PlainDate, voice: NumberVoice): string {
  const away = daysBetween(today, date)
  if (away === 0) return 'tonight'
  if (away === -1) return 'last night'
  return `${sayDay(date, today, voice)} night`
}

/** "07:40" on the day itself, "yesterday 07:40", "Thu 3 Nov 07:40". */
export function sayMoment(at: Instant | Date, now: Instant | Date, voice: Voice): string {
  const { timeZone } = voice
  const time = sayTime(at, voice)
  const [date, today] = [toPlainDate(at, timeZone), toPlainDate(now, timeZone)]
  return date === today ? time : `${sayDay(date, today, voice)} ${time}`
}
