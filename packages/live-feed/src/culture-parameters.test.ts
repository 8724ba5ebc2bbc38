import { describe, expect, it } from 'vitest'
import { eggEffect, stepLengths } from './culture-filter.ts'
import {
  assertParameters,
  type CultureRates,
  eggHabitsOf,
  logsFromRates,
  RATE_NAMES,
  ratePriors,
  ratesFromLogs,
} from './culture-parameters.ts'

const rates: CultureRates = {
  ...{ growthPerDay: 0.6, capacityPerMl: 700, eggWeightPerDay: 1.5, reversionPerDay: 0.5 },
  ...{ spellSdPerDay: 0.1, dailySd: 0.12, handlingSd: 0.15 },
}
const daily = (values: readonly (number | null)[], every = 1) =>
  values.map((logEggs, index) => ({ day: index * every, logEggs }))

describe('how eggs behave in a culture', () => {
  it('is half an egg per female where none was looked at (middle of the bands of Snell et al. 1987)', () => {
    expect(eggHabitsOf(daily([null, null]))).toEqual({ eggBaseline: Math.log(1.5), eggSd: 0, eggCarryOver: 0 })
  })

  it('is a mean alone until five counts say how they vary', () => {
    expect(eggHabitsOf(daily([0.2, null, 0.4, 0.6, 0.8]))).toMatchObject({ eggBaseline: 0.5, eggSd: 0 })
    const five = eggHabitsOf(daily([0.2, 0.4, 0.6, 0.4, 0.4]))
    // Squares 0.04 and 0.04 over four; four pairs of days are too few for what carries over.
    expect(five).toEqual({
      ...{ eggBaseline: expect.closeTo(0.4, 12), eggSd: expect.closeTo(Math.sqrt(0.02), 12), eggCarryOver: 0 },
    })
  })

  it('carries over what it shares with the day before: its covariance over its variance', () => {
    // Deviations -0.3 to 0.3: products 0.06 + 0.02 + 0.02 + 0.06 of six pairs, squares 0.28 over six.
    const rising = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]
    expect(eggHabitsOf(daily(rising)).eggCarryOver).toBeCloseTo(0.16 / 6 / (0.28 / 6), 9)
    expect(eggHabitsOf(daily(rising, 1.5)).eggCarryOver).toBeCloseTo(0.16 / 0.28, 9)
    // Counts two days apart say nothing of tomorrow, and what swings to and fro carries nothing.
    expect(eggHabitsOf(daily(rising, 2)).eggCarryOver).toBe(0)
    expect(eggHabitsOf(daily([0.2, 0.6, 0.2, 0.6, 0.2, 0.6, 0.2])).eggCarryOver).toBe(0)
    expect(eggHabitsOf(daily([0.5, 0.5, 0.5, 0.5, 0.5, 0.5]))).toMatchObject({ eggSd: 0, eggCarryOver: 0 })
  })

  it('promises growth for a day, then fades to the habit as its doubt comes back', () => {
    const habits = { eggBaseline: 0.4, eggSd: 0.2, eggCarryOver: 0.5 }
    const on = (day: number) => eggEffect(rates, habits, { day: 0, logEggs: 0.6 }, day)
    expect(on(0.9)).toEqual({ growth: expect.closeTo(1.5 * 0.2, 12), variance: 0 })
    expect(on(1)).toEqual({ growth: expect.closeTo(0.15, 12), variance: expect.closeTo(0.09 * 0.75, 12) })
    expect(on(2.5).growth).toBeCloseTo(0.075, 12)
    expect(eggEffect(rates, habits, null, 1)).toEqual({ growth: 0, variance: expect.closeTo(0.09, 12) })
  })
})

describe('days that are stepped through', () => {
  it('are pieces of a day at most, cut where the eggs fall silent', () => {
    expect(stepLengths(0, 2.5, null).map(({ days }) => days)).toEqual([1, 1, 0.5])
    const cut = stepLengths(0, 2, { day: 0.25, logEggs: 0.5 })
    expect(cut).toEqual([
      { day: 0, days: 1 },
      { day: 1, days: 0.25 },
      { day: 1.25, days: 0.75 },
    ])
    expect(stepLengths(3, 3, null)).toEqual([])
  })
})

describe('rates before there are counts', () => {
  const about = (name: keyof CultureRates, history: object, densest = 100) =>
    ratePriors({ observations: [], ...history }, densest)[RATE_NAMES.indexOf(name)]!

  it('take an egg for what it brings in its days: 0.6 at 25 C, 1.0 at 20 C (Paloheimo 1974; FAO 361, Table 3.1)', () => {
    expect(about('eggWeightPerDay', { temperatureC: 25 }).mean).toBeCloseTo(-Math.log(0.6), 9)
    expect(about('eggWeightPerDay', { temperatureC: 20 }).mean).toBeCloseTo(0, 9)
    expect(about('eggWeightPerDay', {}).mean).toBeCloseTo(-Math.log(0.6), 9)
  })

  it('take the room’s own capacity before what is published, and that before the densest count', () => {
    const own = about('capacityPerMl', { capacityPerMl: 400, temperatureC: 25 })
    const published = about('capacityPerMl', { temperatureC: 25 })
    const guessed = about('capacityPerMl', {})
    expect(Math.exp(own.mean)).toBeCloseTo(400, 6)
    expect(Math.exp(published.mean)).toBeGreaterThan(600)
    expect(Math.exp(guessed.mean)).toBeCloseTo(200, 6)
    expect(own.sd).toBeLessThan(published.sd)
    expect(published.sd).toBeLessThan(guessed.sd)
  })

  it('are the same as logarithms and back', () => {
    const back = ratesFromLogs(logsFromRates(rates))
    for (const name of RATE_NAMES) expect(back[name]).toBeCloseTo(rates[name], 9)
  })

  it.each([
    ...RATE_NAMES.map((name) => [`parameters.${name} is 0; allowed: a finite number above 0`, { [name]: 0 }] as const),
    ['parameters.eggBaseline is -1; allowed: a finite number from 0', { eggBaseline: -1 }] as const,
    ['parameters.eggSd is -1; allowed: a finite number from 0', { eggSd: -1 }] as const,
    ['parameters.eggCarryOver is 1; allowed: a number from 0 to 0.95', { eggCarryOver: 1 }] as const,
  ])('are refused where %s', (sentence, change) => {
    const sound = { ...rates, eggBaseline: 0, eggSd: 0, eggCarryOver: 0.95 }
    expect(() => assertParameters(sound)).not.toThrow()
    expect(() => assertParameters({ ...sound, ...change })).toThrow(sentence)
  })
})

it('eggs carry over no more than 95 % however slowly they drift, and six counts in a row are enough to tell', () => {
  const drifting = [...new Array<number>(50).fill(0.2), ...new Array<number>(50).fill(0.6)]
  expect(eggHabitsOf(daily(drifting)).eggCarryOver).toBe(0.95)
  // Deviations -0.25 to 0.25: products 0.0375, 0.0075, -0.0025, 0.0075 and 0.0375 of five pairs, squares 0.175 over five.
  expect(eggHabitsOf(daily([0.1, 0.2, 0.3, 0.4, 0.5, 0.6])).eggCarryOver).toBeCloseTo(0.0875 / 0.175, 9)
})

it('what nobody has told of a culture is common practice: spells of half a day’s fading, noise near a tenth', () => {
  const priors = ratePriors({ observations: [], capacityPerMl: 500, temperatureC: 20 }, 100)
  const usual = priors.map(({ mean, sd }) => [Number(Math.exp(mean).toPrecision(9)), sd])
  expect(usual.slice(1)).toEqual([
    // The room's own figure is held to a third, an egg's worth to a half, the rest to a factor of e, handling to one of two.
    [500, 0.3],
    [1, 0.5],
    [0.5, 1],
    [0.1, 1],
    [0.12, 1],
    [0.12, 0.7],
  ])
  expect(ratePriors({ observations: [] }, 100)[1]).toEqual({ mean: Math.log(200), sd: 1 })
})
