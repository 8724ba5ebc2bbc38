import { locales } from '@fryward/shared'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readNumber } from './read-number.ts'
import { sayNumber, sayWhole } from './say-number.ts'
import { typeNumber } from './type-number.ts'

const anyLocale = fc.constantFrom(...locales)
/** What a jug, a scale, a meter or a count may say, over fifteen powers of ten. */
const anyNumber = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: -6, max: 9 }))
  .map(([digits, power]) => Number(`${digits}e${power}`))

describe('numbers of every locale that a room can have', () => {
  it('are read back from a box as what they were, exactly', () => {
    fc.assert(
      fc.property(anyLocale, anyNumber, (locale, value) => {
        expect(readNumber(typeNumber(value, { locale }), { locale })).toEqual({ is: 'number', value })
      }),
      { numRuns: 5000 },
    )
  })

  it('are read as what the page shows, or asked about with that among the answers', () => {
    fc.assert(
      fc.property(anyLocale, anyNumber, (locale, value) => {
        const text = sayNumber(value, { locale })
        const read = readNumber(text, { locale })
        const readings = read.is === 'number' ? [read.value] : read.is === 'unclear' ? read.readings : []
        // Two digits of a number under 1 are within a twentieth of it.
        return readings.some(
          (one) => sayNumber(one, { locale }) === text && Math.abs(one - value) <= 0.06 * Math.abs(value),
        )
      }),
      { numRuns: 5000 },
    )
  })

  it('are read with all the marks between thousands', () => {
    fc.assert(
      fc.property(anyLocale, fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }), (locale, value) => {
        expect(readNumber(sayWhole(value, { locale }), { locale })).toEqual({ is: 'number', value })
      }),
      { numRuns: 5000 },
    )
  })

  it('of one locale, typed in a room of another, are that number, asked about, or refused where no mark tells them apart', () => {
    fc.assert(
      fc.property(anyLocale, anyLocale, anyNumber, (locale, foreign, value) => {
        const text = typeNumber(value, { locale: foreign })
        const read = readNumber(text, { locale })
        const readings = read.is === 'number' ? [read.value] : read.is === 'unclear' ? read.readings : [value]
        // Three digits behind the mark that this room puts between its thousands are its thousands.
        const isThousandHere = /^\D*\d{1,3}\D\d{3}$/u.test(text)
        return isThousandHere || readings.some((one) => Object.is(one, value) || one === value)
      }),
      { numRuns: 5000 },
    )
  })
})
