import type { PlainDate } from '@fryward/shared'
import { PlainDateSchema } from '@fryward/shared'

/** The day before the month, as nearly everywhere; the month first where a locale of the house writes it so. */
const isMonthFirst = (locale: string): boolean => locale === 'en-US'

/**
 * A date as somebody writes it in a file: 2026-03-10, 10.3.2026, or 10/3/2026 as the room's locale has it.
 * @returns null where it is none.
 */
export function readDate(text: string, locale: string): PlainDate | null {
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? []
  if (year && month && day) return dateOf(year, month, day)
  const [, first, mark, second, last] = /^(\d{1,2})([./])(\d{1,2})\2(\d{4})$/.exec(text) ?? []
  if (!first || !second || !last) return null
  return mark === '/' && isMonthFirst(locale) ? dateOf(last, first, second) : dateOf(last, second, first)
}

const dateOf = (year: string, month: string, day: string): PlainDate | null =>
  PlainDateSchema.safeParse(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`).data ?? null
