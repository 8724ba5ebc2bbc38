import { describe, expect, test } from 'vitest'
import {
  conductivityFromSalinity,
  conductivityRatio,
  practicalSalinity,
  practicalSalinityFromConductivity,
} from './practical-salinity.ts'

describe('practicalSalinity', () => {
  // The printed coefficients give 35 to within 1e-7 (UNESCO 44 prints six decimals).
  test('35 is the salinity of the reference conductivity at 15 C', () => {
    expect(practicalSalinity({ conductivityRatio: 1, temperatureC: 15 / 1.00024 })).toBeCloseTo(35, 6)
    expect(practicalSalinityFromConductivity({ conductivityMsPerCm: 42.914, temperatureC: 15 / 1.00024 })).toBeCloseTo(
      35,
      6,
    )
  })

  test('a thermometer on ITS-90 and the same heat on IPTS-68 give one answer', () => {
    const modern = practicalSalinity({ conductivityRatio: 0.9, temperatureC: 25 })
    const old = practicalSalinity({ conductivityRatio: 0.9, temperatureC: 25.006, temperatureScale: 'IPTS-68' })
    expect(modern).toBeCloseTo(old, 9)
  })

  test('water that conducts nothing has no salt', () => {
    expect(practicalSalinity({ conductivityRatio: 0, temperatureC: 25 })).toBe(0)
    expect(conductivityRatio({ salinity: 0, temperatureC: 25 })).toBe(0)
    expect(conductivityFromSalinity({ salinity: 0, temperatureC: 25 })).toBe(0)
  })

  test('the two formulas meet at salinity 2', () => {
    const ratio = conductivityRatio({ salinity: 2, temperatureC: 26 })
    const under = practicalSalinity({ conductivityRatio: ratio * (1 - 1e-9), temperatureC: 26 })
    const over = practicalSalinity({ conductivityRatio: ratio * (1 + 1e-9), temperatureC: 26 })
    expect(over - under).toBeGreaterThan(0)
    expect(over - under).toBeLessThan(1e-8)
  })

  test('no step is left where they meet, in the cold or the warm', () => {
    for (const temperatureC of [-2, 5, 15, 26, 40]) {
      const at2 = conductivityRatio({ salinity: 2, temperatureC })
      const read = (part: number) => practicalSalinity({ conductivityRatio: at2 * (1 + part), temperatureC })
      const steps = Array.from({ length: 40 }, (_, index) => read((index - 19) / 1e4) - read((index - 20) / 1e4))
      expect(Math.min(...steps)).toBeGreaterThan(0.9 * Math.max(...steps))
    }
  })

  test.each([
    [{ conductivityRatio: Number.NaN, temperatureC: 25 }, /conductivityRatio is NaN/],
    [{ conductivityRatio: -0.1, temperatureC: 25 }, /conductivityRatio is -0.1/],
    [
      { conductivityRatio: 2.5, temperatureC: 25 },
      /conductivityRatio is 2.5; allowed: a ratio that means salinity 0 to 42/,
    ],
    [{ conductivityRatio: 1, temperatureC: 41 }, /temperatureC is 41; allowed: -2 to 40 C/],
    [{ conductivityRatio: 1, temperatureC: 25, pressureDbar: -1 }, /pressureDbar is -1; allowed: 0 to 10000 dbar/],
  ])('%o is refused by name, value and range', (input, message) => {
    expect(() => practicalSalinity(input)).toThrow(message)
  })

  test('a salinity over 42 is refused by the inverse', () => {
    expect(() => conductivityRatio({ salinity: 42.1, temperatureC: 25 })).toThrow(/salinity is 42.1; allowed: 0 to 42/)
  })
})
