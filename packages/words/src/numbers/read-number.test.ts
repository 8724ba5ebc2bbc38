import type { Locale } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { readNumber } from './read-number.ts'

const read = (text: string, locale: Locale) => {
  const found = readNumber(text, { locale })
  if (found.is === 'number') return found.value
  return found.is === 'unclear' ? found.readings : found.is
}

describe('a typed number', () => {
  it('has thousands where the room’s own page shows them', () => {
    expect(read('1,200', 'en-GB')).toBe(1200)
    expect(read('1.200', 'de-DE')).toBe(1200)
    expect(read("1'200", 'de-CH')).toBe(1200)
    expect(read('1\u2019200', 'de-CH')).toBe(1200)
    expect(read('1\u202f200', 'fr-FR')).toBe(1200)
    expect(read('1 200', 'sv-SE')).toBe(1200)
    expect(read('12,34,567.5', 'en-IN')).toBe(1_234_567.5)
    expect(read('١٬٢٠٠٫٥', 'ar-EG')).toBe(1200.5)
  })

  it('has a decimal mark where the room has one', () => {
    expect(read('1.200', 'en-GB')).toBe(1.2)
    expect(read('1,200', 'de-DE')).toBe(1.2)
    expect(read('2,5', 'fr-FR')).toBe(2.5)
    expect(read('\u22122,5', 'sv-SE')).toBe(-2.5)
    expect(read('٢٫٥', 'ar-EG')).toBe(2.5)
  })

  it('is asked about where a comma or a point may be either', () => {
    expect(read('1.200', 'fr-FR')).toEqual([1200, 1.2])
    expect(read('1,200', 'de-CH')).toEqual([1200, 1.2])
    expect(read('-12.500', 'sv-SE')).toEqual([-12_500, -12.5])
    expect(read('1,200', 'ar-EG')).toEqual([1200, 1.2])
  })

  it('is read the way of others where that can mean nothing else', () => {
    expect(
      ['2,5', '0,200', '1.200,5', '1.234.567', '1 200', ',5', '1200,75'].map((text) => read(text, 'en-GB')),
    ).toEqual([...[2.5, 0.2, 1200.5, 1_234_567, 1200, 0.5, 1200.75]])
    expect(['2.5', '1,200.5', '1,234,567', '0.125', '1234.567'].map((text) => read(text, 'de-DE'))).toEqual([
      ...[2.5, 1200.5, 1_234_567, 0.125, 'wrong'],
    ])
  })

  it('may end in the words that the page uses for millions, and in a power of ten', () => {
    expect(read('1.25 million', 'en-GB')).toBe(1_250_000)
    expect(read('1,25 million', 'de-DE')).toBe(1_250_000)
    expect(read('2e6', 'en-GB')).toBe(2_000_000)
  })

  it('is none where digits are grouped as nobody groups them, or anything else stands in it', () => {
    const none = [
      'two',
      '1.2.3',
      '-',
      'Infinity',
      '0x10',
      '1 2',
      '12 34',
      '1,2000',
      '1,20,0',
      '1,2,3.4',
      '1.5.5,2',
      '10²',
      '½',
      '1..2',
      '5 mL',
    ]
    expect(none.map((text) => read(text, 'en-GB'))).toEqual(none.map(() => 'wrong'))
    expect(read(' ', 'en-GB')).toBe('empty')
  })
})
