import { describe, expect, it } from 'vitest'
import { backtestCulture } from './culture-backtest.ts'
import { estimateCulture } from './culture-estimate.ts'
import { filterCulture, fitCulture } from './culture-fit.ts'
import { RATE_NAMES, ratePriors } from './culture-parameters.ts'
import { seededRandom } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

const counted = [{ day: 2, densityPerMl: 200, animalsCounted: 100 }]
const fitted = fitCulture({ observations: counted })
const rates = {
  ...{ growthPerDay: 0.6, capacityPerMl: 800, eggWeightPerDay: 1.6, reversionPerDay: 0.5 },
  ...{ spellSdPerDay: 0.2, dailySd: 0.1, handlingSd: 0.15 },
}
const parameters = { ...fitted, ...rates, eggBaseline: Math.log(1.5), eggSd: 0, eggCarryOver: 0 }

describe('a culture counted once', () => {
  const estimate = estimateCulture({ observations: counted }, parameters)
  // 100 animals and 15 % of handling: a logarithm known to sqrt(0.01 + 0.0225).
  const sd = Math.sqrt(0.0325)

  it('is as dense as was counted, with a normal’s middle 80 % of 1.2816 deviations (Abramowitz & Stegun 1964, table 26.5)', () => {
    expect(estimate.densityPerMl).toBeCloseTo(200, 9)
    expect(Math.log(200 / estimate.lower80PerMl)).toBeCloseTo(1.281552 * sd, 9)
    expect(Math.log(estimate.upper80PerMl / 200)).toBeCloseTo(1.281552 * sd, 9)
    expect(estimate).toMatchObject({ day: 2, eggs: null, dilutionPerDay: 0, birthRatePerDay: null })
  })

  it('grows by the logistic, and is unsure of it by its spells and by what crowds it', () => {
    expect(estimate.growthPerDay).toBeCloseTo(0.6 * (1 - 200 / 800), 9)
    expect(estimate.growthSdPerDay).toBeCloseTo(Math.hypot(0.2, (0.6 * 200 * sd) / 800), 9)
    const flushed = estimateCulture({ observations: counted, dilutionPerDay: 0.25 }, parameters)
    expect(flushed.growthPerDay).toBeCloseTo(0.45 - 0.25, 9)
  })

  it('is unsure by the eggs that nobody counted, and surely promised what was', () => {
    const habits = { ...parameters, eggSd: 0.3, eggCarryOver: 0.5 }
    const unseen = estimateCulture({ observations: counted }, habits)
    expect(unseen.growthSdPerDay ** 2 - estimate.growthSdPerDay ** 2).toBeCloseTo((1.6 * 0.3) ** 2, 9)
    const seen = estimateCulture({ observations: [{ ...counted[0]!, eggRatio: 0.8 }] }, habits)
    expect(seen.growthPerDay - estimate.growthPerDay).toBeCloseTo(1.6 * Math.log(1.8 / 1.5), 9)
    expect(seen.growthSdPerDay).toBeCloseTo(estimate.growthSdPerDay, 9)
    expect(seen.eggs).toEqual({ day: 2, logEggs: Math.log1p(0.8) })
  })

  it('is unsure of a density and a spell that hang together by the sum of both', () => {
    const later = estimateCulture({ observations: counted }, parameters, { atDay: 3 })
    const { varDensity, covariance, varSpell } = later.state
    const slope = (-0.6 * later.densityPerMl) / 800
    expect(covariance).toBeGreaterThan(0.005)
    expect(later.growthSdPerDay ** 2).toBeCloseTo(varSpell + 2 * slope * covariance + slope ** 2 * varDensity, 12)
  })

  it('rises or falls once it is two in three sure of it: a normal lies under 0.43 two times in three', () => {
    const trendAt = (deviates: number) => {
      const growthPerDay = deviates > 0 ? deviates * 0.2 : 1e-9
      const dilutionPerDay = deviates > 0 ? 0 : -deviates * 0.2
      const uncrowded = { ...parameters, growthPerDay, capacityPerMl: 1e12 }
      return estimateCulture({ observations: counted, dilutionPerDay }, uncrowded).trend
    }
    expect([-0.45, -0.4, 0.4, 0.45].map(trendAt)).toEqual(['falling', 'steady', 'steady', 'rising'])
  })

  it('loses what neither eggs nor growth account for, dilution being no death', () => {
    const observations = [{ ...counted[0]!, eggRatio: 0.5 }]
    const given = { observations, temperatureC: 25, dilutionPerDay: 0.1 }
    const { birthRatePerDay, deathRatePerDay } = estimateCulture(given, parameters)
    // ln(1 + E) / D (Paloheimo 1974), 0.6 days at 25 C.
    expect(birthRatePerDay).toBeCloseTo(Math.log(1.5) / 0.6, 9)
    expect(deathRatePerDay).toBeCloseTo(Math.log(1.5) / 0.6 - 0.45, 9)
    expect(estimateCulture({ ...given, observations: counted }, parameters)).toMatchObject({
      birthRatePerDay: null,
      deathRatePerDay: null,
    })
  })
})

describe('the day that is estimated', () => {
  const on = (removals: { day: number; fraction: number }[], atDay?: number) =>
    estimateCulture({ observations: counted, removals }, parameters, atDay === undefined ? {} : { atDay })

  it('is that of the last record, and what was taken before the last count is in that count', () => {
    expect(on([{ day: 3.5, fraction: 0.5 }]).day).toBe(3.5)
    expect(on([{ day: 1, fraction: 0.5 }])).toMatchObject({ day: 2, densityPerMl: expect.closeTo(200, 9) })
    expect(on([{ day: 2, fraction: 0.5 }])).toMatchObject({ day: 2, densityPerMl: expect.closeTo(100, 9) })
    const additions = [{ day: 2, addedPerMl: 50 }]
    expect(estimateCulture({ observations: counted, additions }, parameters).densityPerMl).toBeCloseTo(250, 9)
  })

  it('is a year after it at most', () => {
    expect(on([], 2 + 366).day).toBe(368)
    expect(on([{ day: 3, fraction: 0.1 }], 3 + 366).day).toBe(369)
    expect(() => on([], 368.1)).toThrow('atDay is 368.1; allowed: a number from 2 to 368')
    expect(() => on([{ day: 3, fraction: 0.1 }], 2.9)).toThrow('atDay is 2.9; allowed: a number from 3 to 369')
    expect(on([{ day: 368, fraction: 0.1 }]).day).toBe(368)
    expect(() => on([{ day: 369, fraction: 0.1 }])).toThrow(
      'day of the last removal or addition is 369; allowed: a finite number up to 368',
    )
  })
})

describe('the fit of a single count', () => {
  const known = { observations: counted, capacityPerMl: 500, temperatureC: 20, salinity: 20 }

  it('is its priors, each with its own spread', () => {
    const fit = fitCulture(known)
    for (const [index, { mean, sd }] of ratePriors(known, 200).entries()) {
      const { lower, upper } = fit.intervals[RATE_NAMES[index]!]
      expect(Math.log(fit[RATE_NAMES[index]!])).toBeCloseTo(mean, 6)
      // A normal's 95 % is 1.96 deviations on either side; four hundred draws tell a spread to some hundredths.
      expect(Math.abs(Math.log(upper / lower) / (2 * 1.96 * sd) - 1), RATE_NAMES[index]).toBeLessThan(0.08)
      expect(Math.abs(Math.log(upper * lower) / 2 - mean)).toBeLessThan(0.15 * sd)
    }
    expect(fit).toMatchObject({ observations: 1, isConverged: true, logLikelihood: 0, eggBaseline: Math.log(1.5) })
  })

  it('of which nothing is known guesses twice the densest count', () => {
    // An hour apart they say next to nothing of it themselves.
    const observations = [60, 40].map((densityPerMl, hour) => ({ day: hour / 24, densityPerMl }))
    const fit = fitCulture({ observations })
    expect(fit.capacityPerMl / 120).toBeCloseTo(1, 1)
    expect(fit.logLikelihood).toBe(filterCulture({ observations }, fit).filtered.logLikelihood)
    expect(fit.logLikelihood).not.toBe(0)
  })
})

describe('what would have been said before a count', () => {
  const history = {
    observations: [60, 95, 150, 210].map((densityPerMl, day) => ({ day, densityPerMl, animalsCounted: 100 })),
    removals: [{ day: 2, fraction: 0.2 }],
  }
  const fit = fitCulture(history)
  const certain = fit.logCovariance.map((row, i) => row.map((_, j) => (i === j ? 1e-16 : 0)))

  it('is the filter’s expectation where the rates are known, as wide as that', () => {
    const sure = { ...fit, logCovariance: certain }
    const { predictions } = filterCulture(history, sure).filtered
    for (const [index, day] of backtestCulture(history, sure).entries()) {
      const { logDensity, variance } = predictions[index]!
      expect(day).toMatchObject({ day: index + 1, densityPerMl: history.observations[index + 1]!.densityPerMl })
      expect(day.logSd).toBeCloseTo(Math.sqrt(variance), 6)
      expect(day.predictedPerMl).toBeCloseTo(Math.exp(logDensity), 9)
      expect(Math.log(day.upper80PerMl / day.predictedPerMl)).toBeCloseTo(1.281552 * day.logSd, 9)
      expect(Math.log(day.predictedPerMl / day.lower80PerMl)).toBeCloseTo(1.281552 * day.logSd, 9)
    }
  })

  it('is wider by what other likely rates would have said', () => {
    const { filtered, run } = filterCulture(history, fit)
    const draw = rateDrawer(fit, seededRandom(77))
    const others = Array.from({ length: 400 }, () => run(draw(), fit).predictions)
    for (const [index, { logSd }] of backtestCulture(history, fit).entries()) {
      const { logDensity, variance } = filtered.predictions[index]!
      const squares = others.map((predictions) => (predictions[index]!.logDensity - logDensity) ** 2)
      const doubt = squares.reduce((sum, each) => sum + each, 0) / squares.length
      const ratio = (logSd ** 2 - variance) / doubt
      expect(ratio).toBeGreaterThan(0.6)
      expect(ratio).toBeLessThan(1.6)
    }
  })
})
