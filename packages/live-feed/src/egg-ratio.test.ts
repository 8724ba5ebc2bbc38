import { describe, expect, it } from 'vitest'
import { birthRate, eggDevelopmentDays } from './egg-ratio.ts'
import { growthFromLifeTable } from './life-table.ts'

describe('the days of an egg', () => {
  it('lie geometrically between those of the table: 1.3, 1.0 and 0.6 at 15, 20 and 25 C (FAO 361, Table 3.1)', () => {
    expect(eggDevelopmentDays({ temperatureC: 17.5 })).toBeCloseTo(Math.sqrt(1.3), 9)
    expect(eggDevelopmentDays({ temperatureC: 22.5 })).toBeCloseTo(Math.sqrt(0.6), 9)
  })

  it('go on beyond it as those of rotifers in general do: 0.58 and 0.42 at 25 and 30 C (Bottrell et al. 1976)', () => {
    expect(eggDevelopmentDays({ temperatureC: 30 }) / 0.6).toBeCloseTo(0.42 / 0.58, 1)
    // From 1.37 at 15 C by the same curve: exp(2.7547 - 0.2484 ln T - 0.2408 (ln T)^2) is 2.47 at 10 C.
    expect(eggDevelopmentDays({ temperatureC: 10 }) / 1.3).toBeCloseTo(2.47 / 1.37, 1)
  })

  it.each([4.9, 35.1])('are not said at %d C', (temperatureC) => {
    expect(() => eggDevelopmentDays({ temperatureC })).toThrow(/temperatureC is .*; allowed: a number from 5 to 35 C/)
  })
})

describe('births', () => {
  it.each([
    [{ eggRatio: -1, developmentDays: 1 }, 'eggRatio is -1; allowed: a finite number from 0 eggs per female'],
    [{ eggRatio: 1, developmentDays: 0 }, 'developmentDays is 0; allowed: a finite number above 0 days'],
  ])('of %j are refused', (input, sentence) => {
    expect(() => birthRate(input)).toThrow(sentence)
  })

  it('are none without eggs', () => {
    expect(birthRate({ eggRatio: 0, developmentDays: 1 })).toBe(0)
  })

  // Two eggs a day apart, the first on day 1: x + x^2 = 1 has x = (sqrt(5) - 1) / 2, and r is minus its logarithm (Euler-Lotka).
  const two = { eggDays: 0.5, firstEggDays: 0.5, eggIntervalHours: 24, eggsPerFemale: 2 }

  it('replace a life table at the rate that Euler and Lotka ask for', () => {
    expect(growthFromLifeTable(two)).toBeCloseTo(Math.log((1 + Math.sqrt(5)) / 2), 9)
    expect(growthFromLifeTable({ ...two, eggsPerFemale: 1.5 })).toBe(0)
  })

  it.each([
    ['eggDays is 0; allowed: a finite number above 0 days', { eggDays: 0 }],
    ['firstEggDays is -1; allowed: a finite number from 0 days', { firstEggDays: -1 }],
    ['eggIntervalHours is 0; allowed: a finite number above 0 hours', { eggIntervalHours: 0 }],
    ['eggsPerFemale is 1', { eggsPerFemale: 1 }],
  ])('are refused where %s', (sentence, change) => {
    expect(() => growthFromLifeTable({ ...two, ...change })).toThrow(sentence)
  })

  it('may be of a rotifer that lays as it hatches, and of ten thousand eggs, no more', () => {
    // One hatched with an egg, of which the next comes a day later: x^0.5 + x^1.5 = 1, x = 0.4656 (y + y^3 = 1, y = 0.6823).
    expect(growthFromLifeTable({ ...two, firstEggDays: 0 })).toBeCloseTo(-2 * Math.log(0.6823278), 6)
    expect(growthFromLifeTable({ ...two, eggsPerFemale: 10_000 })).toBeCloseTo(Math.LN2, 6)
    expect(() => growthFromLifeTable({ ...two, eggsPerFemale: 10_001 })).toThrow('eggsPerFemale is 10001')
    expect(growthFromLifeTable({ ...two, eggsPerFemale: 2.9 })).toBe(growthFromLifeTable(two))
  })
})

it('eggs take days from 5 to 35 C', () => {
  for (const temperatureC of [5, 35]) expect(eggDevelopmentDays({ temperatureC })).toBeGreaterThan(0)
  // Beyond the table by the curve's own ratio: exp(2.7547 - 0.2484 ln T - 0.2408 (ln T)^2), to four figures.
  expect(eggDevelopmentDays({ temperatureC: 10 })).toBeCloseTo((1.3 * 2.4751) / 1.3725, 2)
  expect(eggDevelopmentDays({ temperatureC: 30 })).toBeCloseTo((0.6 * 0.4166) / 0.5826, 2)
})
