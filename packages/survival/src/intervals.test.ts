import { describe, expect, test } from 'vitest'
import { ArgumentError } from './argument-error.ts'
import { clopperPearsonInterval, poissonInterval, proportionDifferenceInterval, wilsonInterval } from './intervals.ts'

describe('poissonInterval', () => {
  // The rule of three: 3.689 is -ln(0.025), the exact two-sided end for nothing counted.
  test('nothing counted is 0 to 3.69', () => {
    const { lower, upper } = poissonInterval({ count: 0 })
    expect(lower).toBe(0)
    expect(upper).toBeCloseTo(-Math.log(0.025), 10)
  })

  test.each([Number.NaN, -1, 2.5, Number.POSITIVE_INFINITY])('a count of %d is refused', (count) => {
    expect(() => poissonInterval({ count })).toThrow(ArgumentError)
    expect(() => poissonInterval({ count })).toThrow(`count is ${count}; allowed: a whole number from 0`)
  })

  test.each([0, 1, 95, Number.NaN])('a level of %d is refused', (level) => {
    expect(() => poissonInterval({ count: 3, level })).toThrow(`level is ${level}`)
    expect(() => wilsonInterval({ successes: 1, trials: 2, level })).toThrow(`level is ${level}`)
    expect(() => clopperPearsonInterval({ successes: 1, trials: 2, level })).toThrow(`level is ${level}`)
  })
})

describe('intervals of a share', () => {
  test('none and all reach the ends exactly', () => {
    expect(wilsonInterval({ successes: 0, trials: 7 }).lower).toBe(0)
    expect(wilsonInterval({ successes: 7, trials: 7 }).upper).toBe(1)
    expect(clopperPearsonInterval({ successes: 0, trials: 7 }).lower).toBe(0)
    expect(clopperPearsonInterval({ successes: 7, trials: 7 }).upper).toBe(1)
  })

  test.each([
    [{ successes: 1, trials: 0 }, /trials is 0; allowed: a whole number from 1/],
    [{ successes: 8, trials: 7 }, /successes is 8; allowed: a whole number from 0 up to 7/],
    [{ successes: -1, trials: 7 }, /successes is -1/],
    [{ successes: Number.NaN, trials: 7 }, /successes is NaN/],
    [{ successes: 1, trials: 2.5 }, /trials is 2.5/],
  ])('%o is refused', (input, message) => {
    expect(() => wilsonInterval(input)).toThrow(message)
    expect(() => clopperPearsonInterval(input)).toThrow(message)
  })

  test('a difference names the side that is wrong', () => {
    const good = { successes: 1, trials: 2 }
    expect(() => proportionDifferenceInterval({ a: good, b: { successes: 3, trials: 2 } })).toThrow(/b\.successes is 3/)
    expect(() => proportionDifferenceInterval({ a: { successes: 0, trials: 0 }, b: good })).toThrow(/a\.trials is 0/)
  })
})
