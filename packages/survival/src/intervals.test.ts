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

  // scipy 1.17 chi2.ppf, an implementation of its own, either side of where the expansion takes over.
  test.each([
    [2500, 2402.952365431124, 2599.9614843405425],
    [40_000, 39_608.95521413471, 40_393.94398823087],
    [1_000_000, 998_040.9833402939, 1_001_961.9119454322],
  ])('%d counted is %d to %d', (count, lower, upper) => {
    const interval = poissonInterval({ count })
    expect(Math.abs(interval.lower / lower - 1)).toBeLessThan(1e-9)
    expect(Math.abs(interval.upper / upper - 1)).toBeLessThan(1e-9)
  })

  test('passes from the library to the expansion without a step', () => {
    const differences = (values: number[]) => values.slice(1).map((value, index) => value - (values[index] ?? 0))
    const intervals = [498, 499, 500, 501, 502].map((count) => poissonInterval({ count }))
    for (const ends of [intervals.map(({ lower }) => lower), intervals.map(({ upper }) => upper)]) {
      // Of a smooth curve the third differences vanish; a step would show in them whole.
      const third = differences(differences(differences(ends)))
      expect(Math.max(...third.map(Math.abs))).toBeLessThan(1e-5)
    }
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
