import { type Locale, locales } from '@fryward/shared'
import { sayDate } from '../dates/say-date.ts'
import { sayTime } from '../dates/say-time.ts'
import { numberFormat } from '../numbers/say-number.ts'

const sampleAt = new Date('2026-11-26T14:30:00Z')

/** "German (Switzerland): 1’234.5, Thu 26 Nov, 14:30": how a room would read in it. */
export function localeLabel(locale: Locale): string {
  const name = new Intl.DisplayNames('en', { type: 'language', languageDisplay: 'standard' }).of(locale) ?? locale
  const number = numberFormat(locale, { useGrouping: true }).format(12_345.6)
  return `${name}: ${number}, ${sayDate('2026-11-26', { locale })}, ${sayTime(sampleAt, { locale, timeZone: 'UTC' })}`
}

/** The first of the wanted ones that a room can have, exactly or by its language. */
export function closestLocale(wanted: readonly string[]): Locale {
  for (const one of wanted) {
    const exact = locales.find((locale) => locale.toLowerCase() === one.toLowerCase())
    const [language] = one.toLowerCase().split('-')
    const found = exact ?? locales.find((locale) => locale.split('-')[0] === language)
    if (found) return found
  }
  return 'en-GB'
}
