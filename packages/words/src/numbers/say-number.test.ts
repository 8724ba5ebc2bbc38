import { describe, expect, it } from 'vitest'
import { sayNarrow, sayNumber } from './say-number.ts'

const say = (value: number) => sayNumber(value, { locale: 'en-GB' })

describe('a number to read', () => {
  it('shows what a syringe, a jug or a scale can show', () => {
    expect([0.25, 2.64, 18, 125.4, 1234].map(say)).toEqual(['0.25', '2.64', '18', '125', '1,234'])
  })

  it('shows estimates from ten thousand on with three digits and says millions in words', () => {
    expect([280_986, 1_250_000, 68e9, 999_900].map(say)).toEqual(['281,000', '1.25 million', '68 billion', '1 million'])
  })

  it('is narrow beside an axis', () => {
    const narrow = (value: number) => sayNarrow(value, { locale: 'en-GB' })
    expect([5, 300_000, 1_500_000, 2e9].map(narrow)).toEqual(['5', '300,000', '1.5 M', '2 B'])
  })

  it('is written as the locale writes it', () => {
    const of = (locale: Parameters<typeof sayNumber>[1]['locale']) => sayNumber(12_345.6, { locale })
    // Unicode CLDR, number symbols of each locale.
    expect(of('de-DE')).toBe('12.300')
    expect(of('fr-FR')).toBe('12\u202f300')
    expect(of('ar-EG')).toBe('١٢٬٣٠٠')
    expect(sayNumber(1_234_567, { locale: 'en-IN' })).toBe('1.23 million')
    expect(sayNumber(234_567, { locale: 'en-IN' })).toBe('2,35,000')
  })
})
