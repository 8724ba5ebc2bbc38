import type { PlainDate } from '@fryward/shared'

/**
 * Days of the calendar as numbers, by hand and only here: a library for four functions is more than 20 kB of zipped script on a phone
 * that loads Today, and a plain date at noon UTC has no clock change that could move it.
 */
export const dayMs = 86_400_000

/** A plain date has no zone: noon UTC formatted in UTC says the same date anywhere. */
export const noonOf = (date: PlainDate): Date => new Date(`${date}T12:00:00Z`)

const dayNumber = (date: PlainDate) => Math.round(noonOf(date).getTime() / dayMs)

/** Days from one date to another; negative when the second comes first. */
export const daysBetween = (from: PlainDate, to: PlainDate): number => dayNumber(to) - dayNumber(from)

export const addDays = (date: PlainDate, days: number): PlainDate =>
  new Date(noonOf(date).getTime() + days * dayMs).toISOString().slice(0, 10)
