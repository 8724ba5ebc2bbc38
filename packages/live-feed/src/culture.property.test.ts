import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { backtestCulture } from './culture-backtest.ts'
import { estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import { forecastCulture } from './culture-forecast.ts'
import { harvestAdvice } from './harvest-advice.ts'
import { localLevelFilter } from './local-level.ts'

/** Evenly drawn: fc.double draws bit patterns, nearly all of them next to 0 where that is allowed. */
const between = (min: number, max: number) => fc.nat(1e6).map((n) => min + ((max - min) * n) / 1e6)

/** Any culture a room could write down, tidy or not. */
const histories = fc
  .array(
    fc.record({
      gapDays: between(0.2, 9),
      densityPerMl: fc.oneof(fc.constant(0), between(0.1, 20_000)),
      animalsCounted: fc.option(fc.integer({ min: 0, max: 500 }), { nil: undefined }),
      eggRatio: fc.option(between(0, 3), { nil: undefined }),
      fraction: fc.option(between(0, 0.9), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 15 },
  )
  .map((rows) => {
    let day = 0
    const dated = rows.map((row) => {
      day += row.gapDays
      return { ...row, day }
    })
    return {
      observations: dated.map(({ day: on, densityPerMl, animalsCounted, eggRatio }) => ({
        day: on,
        densityPerMl,
        ...(animalsCounted === undefined ? {} : { animalsCounted }),
        ...(eggRatio === undefined ? {} : { eggRatio }),
      })),
      removals: dated.flatMap(({ day: on, fraction }) => (fraction === undefined ? [] : [{ day: on, fraction }])),
    }
  })

describe('any culture history', () => {
  it('gives numbers all the way: parameters, back-test, estimate, forecast and advice', () => {
    fc.assert(
      fc.property(histories, fc.integer({ min: 0, max: 0xffffffff }), (history, seed) => {
        const parameters = fitCulture(history)
        for (const { lower, upper } of Object.values(parameters.intervals)) {
          expect(lower).toBeGreaterThan(0)
          expect(Number.isFinite(upper)).toBe(true)
        }
        const numbers = backtestCulture(history, parameters).flatMap((entry) => Object.values(entry))
        const estimate = estimateCulture(history, parameters)
        numbers.push(estimate.densityPerMl, estimate.growthPerDay, estimate.growthSdPerDay)
        const forecast = forecastCulture({ estimate, days: 4, seed, futures: 20 })
        numbers.push(...forecast.days.flatMap((entry) => Object.values(entry)), forecast.growthPerDay.p50)
        expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([])
        const advice = harvestAdvice({ estimate, volumeL: 10, ageDays: 20, seed })
        expect(advice.shareOfVolume).toBeGreaterThanOrEqual(0)
        expect(advice.shareOfVolume).toBeLessThanOrEqual(0.5)
      }),
      { numRuns: 60 },
    )
  })

  it('never forecasts more for harvesting more', () => {
    const fractions = fc.tuple(between(0, 0.5), between(0, 0.4))
    fc.assert(
      fc.property(histories, fractions, (history, [less, extra]) => {
        const estimate = estimateCulture(history, fitCulture(history))
        const run = (harvestFractionPerDay: number) =>
          forecastCulture({ estimate, plan: { harvestFractionPerDay }, days: 5, seed: 9, futures: 20 }).days
        const light = run(less)
        for (const [k, heavy] of run(less + extra).entries()) {
          const most = light[k]?.p50 ?? Number.NaN
          expect(heavy.p50).toBeLessThanOrEqual(most * (1 + 1e-9))
        }
      }),
      { numRuns: 30 },
    )
  })

  it('is the same whatever day the axis starts on', () => {
    fc.assert(
      fc.property(histories, fc.integer({ min: -500, max: 500 }), (history, shift) => {
        const moved = {
          observations: history.observations.map((row) => ({ ...row, day: row.day + shift })),
          removals: history.removals.map((row) => ({ ...row, day: row.day + shift })),
        }
        const parameters = fitCulture(history)
        const here = backtestCulture(history, parameters)
        for (const [i, entry] of backtestCulture(moved, parameters).entries()) {
          expect(entry.predictedPerMl / (here[i]?.predictedPerMl ?? Number.NaN)).toBeCloseTo(1, 6)
        }
      }),
      { numRuns: 30 },
    )
  })
})

describe('localLevelFilter', () => {
  const series = fc.array(fc.option(between(-1e3, 1e3)), { minLength: 1, maxLength: 40 })
  const variance = between(1e-3, 1e3)

  it('moves with the series and is no surer after a missing value', () => {
    fc.assert(
      fc.property(series, variance, variance, between(-50, 50), (values, h, q, shift) => {
        const run = (all: (number | null)[], initialMean: number) =>
          localLevelFilter({ series: all, observationVariance: h, levelVariance: q, initialMean, initialVariance: 10 })
        const here = run(values, 0)
        const there = run(
          values.map((value) => (value === null ? null : value + shift)),
          shift,
        )
        expect(here.predictedMeans).toHaveLength(values.length + 1)
        expect(there.logLikelihood).toBeCloseTo(here.logLikelihood, 4)
        for (const [i, value] of values.entries()) {
          const before = here.predictedVariances[i] ?? Number.NaN
          const after = here.filteredVariances[i] ?? Number.NaN
          if (value === null) expect(after).toBe(before)
          else expect(after).toBeLessThanOrEqual(before)
        }
      }),
      { numRuns: 100 },
    )
  })

  it('refuses what it cannot filter', () => {
    const input = { series: [1], observationVariance: 1, levelVariance: 1, initialMean: 0, initialVariance: 1 }
    expect(() => localLevelFilter({ ...input, series: [] })).toThrow('series.length is 0')
    expect(() => localLevelFilter({ ...input, series: [Number.NaN] })).toThrow('series[0] is NaN')
    expect(() => localLevelFilter({ ...input, levelVariance: -1 })).toThrow('levelVariance is -1')
    expect(() => localLevelFilter({ ...input, observationVariance: 0, initialVariance: 0 })).toThrow(
      'observationVariance',
    )
  })
})
