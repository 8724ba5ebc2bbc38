import { describe, expect, it } from 'vitest'
import { backtestCulture } from './culture-backtest.ts'
import { estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import { cultureFutures, forecastCulture } from './culture-forecast.ts'
import type { CultureHistory } from './culture-history.ts'

/** A young culture counted with care and harvested once. */
const history: CultureHistory = {
  observations: [
    { day: 0, densityPerMl: 63, animalsCounted: 63 },
    { day: 1, densityPerMl: 95, animalsCounted: 95 },
    { day: 2, densityPerMl: 150, animalsCounted: 150 },
    { day: 3, densityPerMl: 210, animalsCounted: 105, eggRatio: 0.6 },
  ],
  removals: [{ day: 3, fraction: 0.2 }],
  temperatureC: 25,
  salinity: 20,
}
const parameters = fitCulture(history)
const estimate = estimateCulture(history, parameters)

describe('fitCulture', () => {
  it('answers with its priors when there is a single count', () => {
    const single = fitCulture({
      observations: [{ day: 0, densityPerMl: 63 }],
      removals: [],
      temperatureC: 25,
      salinity: 20,
    })
    // Half-way, by logarithms, between the clone's 0.675 a day (Lubzens et al. 1985) and a doubling every 2 days (FAO 361).
    expect(single.growthPerDay).toBeCloseTo(Math.sqrt((0.675 * Math.LN2) / 2), 6)
    expect(single.capacityPerMl).toBeCloseTo(720, 4)
    expect(single.eggWeightPerDay).toBeCloseTo(1 / 0.6, 6)
    expect(single.observations).toBe(1)
  })

  it('takes nothing published of a capacity for a culture of which no condition is known, or in fresh water', () => {
    const observations = [{ day: 0, densityPerMl: 63 }]
    expect(fitCulture({ observations }).capacityPerMl).toBeCloseTo(126, 4)
    expect(fitCulture({ observations, salinity: 0 }).capacityPerMl).toBeCloseTo(126, 4)
    expect(fitCulture({ observations, strain: 'S' }).capacityPerMl).toBeCloseTo(720, 4)
  })

  it('is less sure of a strain away from its best temperature', () => {
    const observations = [{ day: 0, densityPerMl: 63 }]
    const width = (strain: 'L' | 'S') => {
      const { lower, upper } = fitCulture({ observations, strain, temperatureC: 24, salinity: 20 }).intervals
        .growthPerDay
      return upper / lower
    }
    expect(width('S')).toBeGreaterThan(width('L') * 1.5)
  })

  it('takes the room’s own capacity over a guess', () => {
    expect(fitCulture({ ...history, capacityPerMl: 2000 }).capacityPerMl).toBeGreaterThan(1200)
  })

  it('stands a count of nothing and a gap', () => {
    const crashed = fitCulture({
      observations: [...history.observations, { day: 9, densityPerMl: 0, animalsCounted: 0 }],
      removals: [],
    })
    expect(Object.values(crashed.intervals).every(({ lower, upper }) => lower > 0 && upper > lower)).toBe(true)
  })

  it.each([
    ['observations.length', { observations: [] }],
    [
      'observations[1].day',
      {
        observations: [
          { day: 1, densityPerMl: 5 },
          { day: 1, densityPerMl: 6 },
        ],
      },
    ],
    [
      'observations[1].day',
      {
        observations: [
          { day: 1, densityPerMl: 5 },
          { day: 1e9, densityPerMl: 6 },
        ],
      },
    ],
    ['observations[0].densityPerMl', { observations: [{ day: 1, densityPerMl: Number.NaN }] }],
    ['observations[0].densityPerMl', { observations: [{ day: 1, densityPerMl: -3 }] }],
    ['observations[0].eggRatio', { observations: [{ day: 1, densityPerMl: 5, eggRatio: Number.NaN }] }],
    ['removals[0].fraction', { removals: [{ day: 1, fraction: 1 }] }],
    ['dilutionPerDay', { dilutionPerDay: -0.1 }],
    ['temperatureC', { temperatureC: 60 }],
    ['salinity', { salinity: 120 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => fitCulture({ ...history, ...change })).toThrow(argument)
  })
})

describe('estimateCulture', () => {
  it('stands after the last harvest', () => {
    expect(estimate.day).toBe(3)
    const before = estimateCulture({ ...history, removals: [] }, parameters)
    expect(estimate.densityPerMl).toBeCloseTo(before.densityPerMl * 0.8, 9)
    expect(estimate.lower80PerMl).toBeLessThan(estimate.densityPerMl)
    expect(estimate.trend).toBe('rising')
  })

  it('splits growth into births and deaths where eggs and temperature are known', () => {
    expect(estimate.birthRatePerDay).toBeCloseTo(Math.log(1.6) / 0.6, 9)
    expect(estimate.deathRatePerDay).toBeCloseTo((estimate.birthRatePerDay ?? 0) - estimate.growthPerDay, 9)
    const { temperatureC: _, ...unknown } = history
    expect(estimateCulture(unknown, parameters).birthRatePerDay).toBeNull()
  })

  it('looks ahead with more doubt', () => {
    const later = estimateCulture(history, parameters, { atDay: 6 })
    const ratio = (e: typeof later) => e.upper80PerMl / e.lower80PerMl
    expect(ratio(later)).toBeGreaterThan(ratio(estimate))
    expect(() => estimateCulture(history, parameters, { atDay: 2 })).toThrow('atDay is 2')
    const far = { ...history, removals: [{ day: 1e9, fraction: 0.1 }] }
    expect(() => estimateCulture(far, parameters)).toThrow('last removal')
  })
})

describe('a count', () => {
  it('of few animals says less than one of many', () => {
    const width = (animalsCounted?: number) => {
      const observations = history.observations.map(({ day, densityPerMl }) => ({
        ...{ day, densityPerMl },
        ...(animalsCounted === undefined ? {} : { animalsCounted }),
      }))
      const { upper80PerMl, lower80PerMl } = estimateCulture({ ...history, observations }, parameters)
      return upper80PerMl / lower80PerMl
    }
    expect(width(4)).toBeGreaterThan(width(400) * 1.05)
    // Taken as exact where nobody says how many it was of.
    expect(width()).toBeLessThan(width(400))
  })

  it.each([
    [{ day: Number.NaN }, 'observations[1].day is NaN'],
    [{ densityPerMl: -1 }, /^observations\[1\]\.densityPerMl is -1.* per mL/],
    [{ animalsCounted: -1 }, /^observations\[1\]\.animalsCounted is -1.* animals/],
    [{ eggRatio: -1 }, /^observations\[1\]\.eggRatio is -1.* eggs per female/],
  ])('that cannot be is refused, and which: %j', (change, sentence) => {
    const observations = [
      { day: 0, densityPerMl: 60 },
      { day: 1, densityPerMl: 80, ...change },
    ]
    expect(() => fitCulture({ observations })).toThrow(sentence)
  })
})

describe('backtestCulture', () => {
  it('has one entry for each observation after the first', () => {
    const days = backtestCulture(history, parameters)
    expect(days.map((entry) => entry.day)).toEqual([1, 2, 3])
    for (const entry of days) {
      expect(entry.lower80PerMl).toBeLessThan(entry.predictedPerMl)
      expect(entry.upper80PerMl).toBeGreaterThan(entry.predictedPerMl)
    }
  })

  it('knows of a harvest before the count that follows it', () => {
    const first = (removals: CultureHistory['removals']) =>
      backtestCulture({ ...history, removals }, parameters)[0]?.predictedPerMl ?? Number.NaN
    // Halved just after day 0: less crowded, so a little more than half by day 1.
    expect(first([{ day: 0, fraction: 0.5 }]) / first([])).toBeGreaterThan(0.5)
    expect(first([{ day: 0, fraction: 0.5 }]) / first([])).toBeLessThan(0.6)
  })

  it('refuses parameters that cannot be', () => {
    expect(() => backtestCulture(history, { ...parameters, handlingSd: 0 })).toThrow('parameters.handlingSd is 0')
  })
})

describe('forecastCulture', () => {
  it('lies straight between ranks: of eleven futures a tenth is the second, a quarter half-way from the third to the fourth', () => {
    // Type 7 of Hyndman & Fan 1996, Am. Stat. 50:361-365: share * (n - 1) ranks from the lowest.
    const asked = { estimate, days: 2, seed: 3, futures: 11 }
    const { densitiesPerMl } = cultureFutures(asked)
    const sorted = densitiesPerMl.map(([, second]) => second ?? Number.NaN).sort((a, b) => a - b)
    const at = (rank: number) => ((sorted[Math.floor(rank)] ?? 0) + (sorted[Math.ceil(rank)] ?? 0)) / 2
    const { day, ...quantiles } = forecastCulture(asked).days[1]!
    expect(day).toBe(estimate.day + 2)
    const expected = { p05: at(0.5), p10: at(1), p25: at(2.5), p50: at(5), p75: at(7.5), p90: at(9), p95: at(9.5) }
    for (const [name, value] of Object.entries(expected))
      expect(quantiles[name as keyof typeof quantiles], name).toBeCloseTo(value, 9)
  })

  it('of futures that have all crashed has no growth, and is not unknown', () => {
    const { growthPerDay, days } = forecastCulture({ estimate, days: 3, seed: 1, futures: 50, crashHazardPerDay: 1e6 })
    expect(growthPerDay.p50).toBe(Number.NEGATIVE_INFINITY)
    expect(days[2]).toMatchObject({ p05: 0, p50: 0, p95: 0 })
  })

  it('gives the same quantiles for the same seed and others for another', () => {
    const once = forecastCulture({ estimate, days: 5, seed: 7 })
    expect(forecastCulture({ estimate, days: 5, seed: 7 })).toEqual(once)
    expect(forecastCulture({ estimate, days: 5, seed: 8 }).days[0]?.p50).not.toBe(once.days[0]?.p50)
  })

  it('puts its quantiles in order and widens with the days', () => {
    const { days } = forecastCulture({ estimate, days: 10, seed: 1 })
    expect(days.map((entry) => entry.day)).toEqual([4, 5, 6, 7, 8, 9, 10, 11, 12, 13])
    for (const { p05, p10, p25, p50, p75, p90, p95 } of days) {
      expect([p05, p10, p25, p50, p75, p90, p95].toSorted((a, b) => a - b)).toEqual([p05, p10, p25, p50, p75, p90, p95])
    }
    const ratio = (k: number) => (days[k]?.p90 ?? 0) / (days[k]?.p10 ?? 1)
    expect(ratio(9)).toBeGreaterThan(ratio(0))
  })

  it('reads a day before its daily harvest and after a harvest of the estimate’s own day', () => {
    const median = (plan: Parameters<typeof forecastCulture>[0]['plan']) =>
      forecastCulture({ estimate, plan, days: 2, seed: 2 }).days.map((entry) => entry.p50)
    const [none = 0, noneNext = 0] = median({})
    const [daily = 0, dailyNext = 0] = median({ harvestFractionPerDay: 0.3 })
    expect(daily).toBe(none)
    expect(dailyNext).toBeLessThan(noneNext)
    const [today = 0] = median([{ day: 3, fraction: 0.3 }])
    expect(today).toBeLessThan(none)
    expect(today).toBeGreaterThan(none * 0.7)
    const [, planned = 0] = median({ removals: [{ day: 4, fraction: 0.3 }] })
    expect(planned).toBeCloseTo(dailyNext, 9)
  })

  it('settles where growth replaces the harvest', () => {
    // Known rates, no doubt: (1 - f) exp(r (1 - N/K)) balances near N = K (1 + ln(1 - f) / r).
    const certain = {
      ...parameters,
      growthPerDay: 0.6,
      capacityPerMl: 600,
      spellSdPerDay: 1e-6,
      dailySd: 1e-6,
      logCovariance: parameters.logCovariance.map((row, i) => row.map((_, j) => (i === j ? 1e-12 : 0))),
    }
    const still = estimateCulture({ ...history, removals: [] }, certain)
    const end = forecastCulture({
      estimate: still,
      plan: { harvestFractionPerDay: 0.2 },
      days: 200,
      seed: 1,
      futures: 20,
    })
    // Beverton-Holt form of a day's logistic growth: N' = N e^r / (1 + N (e^r - 1) / K), before the harvest.
    const e = Math.exp(0.6)
    const fixedPoint = (600 * (0.8 * e - 1)) / (0.8 * (e - 1))
    expect((end.days.at(-1)?.p50 ?? 0) / fixedPoint).toBeCloseTo(1, 3)
    expect(end.growthPerDay.p50).toBeGreaterThan(0.2)
  })

  it('lets a share of futures crash at the given hazard', () => {
    const { densitiesPerMl, growthPerDay } = cultureFutures({
      estimate,
      days: 20,
      seed: 5,
      futures: 2000,
      crashHazardPerDay: 0.05,
    })
    const alive = densitiesPerMl.filter((course) => (course.at(-1) ?? 0) > 0).length / 2000
    expect(Math.abs(alive - Math.exp(-1))).toBeLessThan(0.04)
    expect(growthPerDay.filter((growth) => growth === Number.NEGATIVE_INFINITY).length).toBe(
      Math.round(2000 * (1 - alive)),
    )
    const { days } = forecastCulture({ estimate, days: 20, seed: 5, futures: 2000, crashHazardPerDay: 0.05 })
    expect(days.at(-1)?.p50).toBe(0)
    expect(days.flatMap((entry) => Object.values(entry)).some(Number.isNaN)).toBe(false)
  })

  it.each([
    ['days', { days: 0 }],
    ['days', { days: 1000 }],
    ['seed', { seed: -1 }],
    ['futures', { futures: 0 }],
    ['crashHazardPerDay', { crashHazardPerDay: Number.NaN }],
    ['plan.harvestFractionPerDay', { plan: { harvestFractionPerDay: 1 } }],
    ['removals[0].fraction', { plan: [{ day: 4, fraction: -0.1 }] }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => forecastCulture({ estimate, days: 3, seed: 1, ...change })).toThrow(argument)
  })
})
