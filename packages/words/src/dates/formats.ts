import type { Locale } from '@fryward/shared'
import { marksOf } from '../numbers/locale-marks.ts'

/** What a locale decides of dates: which comes first, and how long its clock is. Names of days and months are English. */
export type Manner = { isMonthFirst: boolean; isTwelveHours: boolean; base: string }

const manners = new Map<Locale, Manner>()
export function mannerOf(locale: Locale): Manner {
  const manner = manners.get(locale) ?? readManner(locale)
  manners.set(locale, manner)
  return manner
}

function readManner(locale: Locale): Manner {
  const parts = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short' }).formatToParts(0)
  const order = parts.map((part) => part.type).filter((type) => type === 'day' || type === 'month')
  const { hourCycle } = new Intl.DateTimeFormat(locale, { hour: 'numeric' }).resolvedOptions()
  return {
    isMonthFirst: order[0] === 'month',
    isTwelveHours: hourCycle === 'h12' || hourCycle === 'h11',
    base: `en-GB-u-nu-${marksOf(locale).digits}`,
  }
}

type Part = Intl.DateTimeFormatPartTypes
const formats = new Map<string, Intl.DateTimeFormat>()

/** The parts of a moment by name, in English words and the locale's digits. Making a format costs far more than using it. */
export function partsOf(
  at: Date,
  { locale, timeZone, options }: { locale: Locale; timeZone: string; options: Intl.DateTimeFormatOptions },
): (part: Part) => string {
  const { base } = mannerOf(locale)
  const key = `${base} ${timeZone} ${JSON.stringify(options)}`
  const format = formats.get(key) ?? new Intl.DateTimeFormat(base, { timeZone, ...options })
  formats.set(key, format)
  const parts = format.formatToParts(at)
  return (part) => parts.find((one) => one.type === part)?.value ?? ''
}
