import { locales } from '@fryward/shared'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sayQuantity } from './say-quantity.ts'
import { toShown } from './shown.ts'
import { readTyped, toTyped } from './typed.ts'

describe('a quantity in the room’s units', () => {
  it('says one of a thing in the singular', () => {
    expect(toShown({ value: 1, unit: 'days' }, 'metric').label).toBe('day')
    expect(toShown({ value: 2, unit: 'days' }, 'metric').label).toBe('days')
    expect(toShown({ value: 0, unit: 'days' }, 'metric').label).toBe('days')
    expect(toShown({ value: 1, unit: 'samples' }, 'us').label).toBe('sample')
    expect(toShown({ value: 1, unit: 'mL' }, 'metric').label).toBe('mL')
  })

  it('is converted and written as its people read it', () => {
    // NIST Special Publication 811, appendix B: a US gallon is 3.785 412 L.
    expect(sayQuantity({ value: 37.854_12, unit: 'L' }, { units: 'us', locale: 'en-US' })).toBe('10 gal')
    // The same table: a US liquid quart is 0.946 352 9 L, a pound 453.592 37 g; a difference may be less than nothing.
    expect(toShown({ value: -1.892_706, unit: 'L' }, 'us')).toEqual({ value: expect.closeTo(-2, 5), label: 'qt' })
    expect(toShown({ value: 907.184_74, unit: 'g' }, 'us')).toEqual({ value: expect.closeTo(2, 9), label: 'lb' })
    expect(sayQuantity({ value: 25, unit: 'degC' }, { units: 'us', locale: 'en-US' })).toBe('77 °F')
    expect(sayQuantity({ value: 0.125, unit: 'share' }, { units: 'metric', locale: 'de-DE' })).toBe('12,5%')
    expect(sayQuantity({ value: 2.64, unit: 'mL' }, { units: 'metric', locale: 'fr-FR' })).toBe('2,64 mL')
  })

  it('typed into a box comes back as it was, in both systems and every locale', () => {
    const cases = fc.record({
      locale: fc.constantFrom(...locales),
      value: fc.integer({ min: 1, max: 99_999 }).map((tenths) => tenths / 10),
      unit: fc.constantFrom('L', 'mL', 'g', 'degC', 'psu', 'share', null),
      units: fc.constantFrom('metric' as const, 'us' as const),
    })
    fc.assert(
      fc.property(cases, ({ locale, value, unit, units }) => {
        const voice = { locale, units }
        const read = readTyped(toTyped(value, unit, voice), unit, voice)
        const values = read.is === 'number' ? [read.value] : read.is === 'unclear' ? read.readings : []
        // Six digits of gallons or Fahrenheit hold the litre or degree to one part in a hundred thousand.
        return values.some((one) => Math.abs(one - value) <= Math.max(1e-5 * value, 1e-4))
      }),
      { numRuns: 3000 },
    )
  })
})
