import { expect, it } from 'vitest'
import { assertInRange, assertLength, assertPositive, assertShare, assertWholeNumber } from './check-input.ts'

it.each<[string, () => void]>([
  ['x is -1; allowed: a number from 0 to 4 h', () => assertInRange('x', -1, { min: 0, max: 4, unit: 'h' })],
  ['x is 5; allowed: a number from 0 to 4', () => assertInRange('x', 5, { min: 0, max: 4 })],
  ['x is -1; allowed: a finite number from 0 h', () => assertInRange('x', -1, { min: 0, unit: 'h' })],
  ['x is 5; allowed: a finite number up to 4', () => assertInRange('x', 5, { max: 4 })],
  ['x is Infinity; allowed: a finite number', () => assertInRange('x', Number.POSITIVE_INFINITY)],
  ['x is 0; allowed: a finite number above 0 h', () => assertPositive('x', 0, 'h')],
  ['x is NaN; allowed: a finite number above 0', () => assertPositive('x', Number.NaN)],
  ['x is Infinity; allowed: a finite number above 0', () => assertPositive('x', Number.POSITIVE_INFINITY)],
  ['x is -1; allowed: a whole number from 0', () => assertWholeNumber('x', -1)],
  ['x is 9007199254740992; allowed: a whole number from 0', () => assertWholeNumber('x', 2 ** 53)],
  ['x is -0.1; allowed: a share from 0 to below 1', () => assertShare('x', -0.1)],
  ['x is NaN; allowed: a share from 0 to below 1', () => assertShare('x', Number.NaN)],
  ['x is 0.5; allowed: a whole number from 0', () => assertWholeNumber('x', 0.5)],
  ['x is 5; allowed: a whole number from 1 to 4', () => assertWholeNumber('x', 5, { min: 1, max: 4 })],
  ['x is 1; allowed: a share from 0 to below 1', () => assertShare('x', 1)],
  ['x.length is 0; allowed: 1 or more entries', () => assertLength('x', [])],
])('says that %s', (sentence, call) => {
  expect(call).toThrow(new RegExp(`^${sentence}$`))
})

it('takes both ends of what is allowed', () => {
  for (const value of [0, 4]) {
    expect(() => assertInRange('x', value, { min: 0, max: 4 })).not.toThrow()
    expect(() => assertWholeNumber('x', value, { min: 0, max: 4 })).not.toThrow()
  }
  expect(() => assertShare('x', 0)).not.toThrow()
  expect(() => assertLength('x', [1, 2], 2)).not.toThrow()
})
