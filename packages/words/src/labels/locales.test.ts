import { locales } from '@fryward/shared'
import { expect, test } from 'vitest'
import { closestLocale, localeLabel } from './locales.ts'

test('a locale is offered by its language and place, with what it would look like', () => {
  expect(localeLabel('en-US')).toBe('English (United States): 12,345.6, Thu, Nov 26, 2:30\u00a0pm')
  expect(localeLabel('de-DE')).toBe('German (Germany): 12.345,6, Thu 26 Nov, 14:30')
  expect(new Set(locales.map(localeLabel)).size).toBe(locales.length)
})

test('a device’s own way is taken where a room can have it, else that of its language, else the British', () => {
  expect(closestLocale(['fr-CH', 'de-DE'])).toBe('fr-CH')
  expect(closestLocale(['de-LI'])).toBe('de-AT')
  expect(closestLocale(['tlh', 'ja'])).toBe('ja-JP')
  expect(closestLocale(['tlh'])).toBe('en-GB')
  expect(closestLocale([])).toBe('en-GB')
})
