import { describe, expect, it } from 'vitest'
import { drawPiece, drawStart } from './culture-course.ts'
import { cultureDaysAhead, expectedCultureDays } from './culture-days.ts'
import { type CultureEstimate, estimateCulture } from './culture-estimate.ts'
import { logisticStep, stepNoise } from './culture-filter.ts'
import { fitCulture } from './culture-fit.ts'
import { cultureFutures } from './culture-forecast.ts'
import { logsFromRates, RATE_NAMES } from './culture-parameters.ts'
import type { Random } from './random.ts'
import { rateDrawer } from './rate-draws.ts'

/** Normals that are said beforehand, and 0 after them. */
const saying = (...normals: number[]): Random => ({ uniform: () => 0.5, normal: () => normals.shift() ?? 0 })

const history = { observations: [{ day: 4, densityPerMl: 200, animalsCounted: 100 }], temperatureC: 25, salinity: 20 }
const fitted = fitCulture(history)
const rates = {
  ...{ growthPerDay: 0.6, capacityPerMl: 600, eggWeightPerDay: 1.6, reversionPerDay: 0.5 },
  ...{ spellSdPerDay: 0.15, dailySd: 0.1, handlingSd: 0.12 },
}
const certain = fitted.logCovariance.map((row, i) => row.map((_, j) => (i === j ? 1e-16 : 0)))
const parameters = { ...fitted, ...rates, logCovariance: certain, eggBaseline: 0.4, eggSd: 0.2, eggCarryOver: 0.5 }
const plain: CultureEstimate = {
  ...estimateCulture(history, parameters),
  state: { day: 4, logDensity: 5, spell: 0.1, varDensity: 0.04, covariance: 0.006, varSpell: 0.01 },
  densityPerMl: Math.exp(5),
}
const withEggs: CultureEstimate = { ...plain, eggs: { day: 4, logEggs: 0.7 } }

describe('a start that is drawn', () => {
  const { state } = plain
  const moved = (normals: number[], estimate = plain) => {
    const { logDensity, spell } = drawStart(estimate, saying(...normals))
    return [logDensity - estimate.state.logDensity, spell - estimate.state.spell] as const
  }

  it('is the estimate where nothing is drawn, and has its covariance', () => {
    expect(moved([0, 0])).toEqual([0, 0])
    // A linear map of two independent normals has as covariance the sum of the squares of what each of them does.
    const [first, second] = [moved([1, 0]), moved([0, 1])]
    expect(first[0] ** 2 + second[0] ** 2).toBeCloseTo(state.varDensity, 12)
    expect(first[0] * first[1] + second[0] * second[1]).toBeCloseTo(state.covariance, 12)
    expect(first[1] ** 2 + second[1] ** 2).toBeCloseTo(state.varSpell, 12)
  })

  it('stands a density or a spell that is known for certain, and a rounding below it', () => {
    const known = { ...plain, state: { ...state, varDensity: 0, covariance: 0 } }
    expect(moved([1, 1], known)).toEqual([0, expect.closeTo(0.1, 12)])
    const below = { ...plain, state: { ...state, varDensity: -1e-18, covariance: 0, varSpell: -1e-18 } }
    expect(moved([1, 1], below)).toEqual([0, 0])
  })

  it('has the eggs that were seen last, as they differ from the usual', () => {
    expect(drawStart(plain, saying())).toMatchObject({ eggs: 0, eggAgeDays: 0 })
    expect(drawStart(withEggs, saying()).eggs).toBeCloseTo(0.3, 12)
  })
})

describe('a piece that is drawn', () => {
  const draw = (estimate: CultureEstimate, at: { day: number; days: number }, ...normals: number[]) => {
    const course = drawStart(estimate, saying())
    const piece = drawPiece(course, at, { rates, estimate, random: saying(...normals) })
    return { course, piece }
  }

  it('grows by its rate, its spell and the eggs of the day before, less what is flushed out', () => {
    const { meanShare, left } = stepNoise(rates, 0.5)
    const flushed = { ...withEggs, dilutionPerDay: 0.2 }
    const { course, piece } = draw(flushed, { day: 4, days: 0.5 })
    expect(piece).toEqual({
      ...{ growth: expect.closeTo(0.6 - 0.2 + 1.6 * 0.3 + 0.1 * meanShare, 12), crowding: 0.6 / 600 },
      ...{ days: 0.5, toDensity: 0 },
    })
    expect(course.spell).toBeCloseTo(0.1 * left, 12)
  })

  it('is noisy as a step of the filter is', () => {
    const noise = stepNoise(rates, 1)
    const at = { day: 4, days: 1 }
    const effect = (...normals: number[]) => {
      const { piece, course } = draw(withEggs, at, ...normals)
      return [piece.toDensity, course.spell - 0.1 * noise.left] as const
    }
    const [first, second] = [effect(1, 0), effect(0, 1)]
    expect(first[0] ** 2 + second[0] ** 2).toBeCloseTo(noise.varDensity, 12)
    expect(first[0] * first[1] + second[0] * second[1]).toBeCloseTo(noise.covariance, 12)
    expect(first[1] ** 2 + second[1] ** 2).toBeCloseTo(noise.varSpell, 12)
  })

  it('halves what the eggs promised each day that they are not counted, and draws the rest of their spread', () => {
    const eggsOn = (day: number, ...normals: number[]) => draw(withEggs, { day, days: 1 }, ...normals).course.eggs
    expect([4, 4.9, 5, 6.5].map((day) => eggsOn(day))).toEqual(
      [0.3, 0.3, 0.15, 0.075].map((each) => expect.closeTo(each, 12)),
    )
    // Of a variance of 0.2^2 a quarter carries over: three quarters are drawn anew.
    expect(eggsOn(5, 1) - eggsOn(5)).toBeCloseTo(0.2 * Math.sqrt(0.75), 12)
    expect(eggsOn(6, 1) - eggsOn(6)).toBeCloseTo(0.1 * Math.sqrt(0.75), 12)
  })

  it('draws eggs from the first day on where none were counted', () => {
    expect(draw(plain, { day: 4, days: 1 }, 1).course.eggs).toBeCloseTo(0.2 * Math.sqrt(0.75), 12)
    expect(draw(plain, { day: 4, days: 1 }).course.eggs).toBe(0)
  })
})

describe('rates that are drawn', () => {
  it('have the covariance of the fit round its estimates', () => {
    const doubtful = { ...fitted, ...rates }
    const centre = logsFromRates(doubtful)
    const shifts = RATE_NAMES.map((_, one) => {
      const normals = RATE_NAMES.map((__, index) => (index === one ? 1 : 0))
      return logsFromRates(rateDrawer(doubtful, saying(...normals))()).map((log, i) => log - centre[i]!)
    })
    for (const [i, row] of fitted.logCovariance.entries())
      for (const [j, covariance] of row.entries())
        expect(shifts.reduce((sum, shift) => sum + shift[i]! * shift[j]!, 0)).toBeCloseTo(covariance, 9)
  })

  it('are refused where what is given is no covariance', () => {
    const logCovariance = certain.map((row, i) => row.map((each) => (i === 2 ? -each : each)))
    expect(() => rateDrawer({ ...parameters, logCovariance }, saying())).toThrow(
      'parameters.logCovariance is not positive definite; allowed: a covariance, as fitCulture gives it',
    )
  })
})

describe('the days that are expected', () => {
  const quiet: CultureEstimate = { ...plain, state: { ...plain.state, spell: 0 } }
  const first = (estimate: CultureEstimate) => expectedCultureDays({ estimate, days: 1 }).days[0]!

  // Logistic growth over a day in closed form: gain e^r, crowding (e^r - 1) / K (Verhulst 1838, Corr. math. phys. 10:113-121).
  it('are logistic', () => {
    const { densityPerMl, days } = expectedCultureDays({ estimate: quiet, days: 2 })
    expect(densityPerMl).toBe(quiet.densityPerMl)
    for (const { gain, crowding } of days) {
      expect(gain).toBeCloseTo(Math.exp(0.6), 12)
      expect(crowding).toBeCloseTo((Math.exp(0.6) - 1) / 600, 12)
    }
  })

  it('grow less under dilution, and stand crowding alone where it takes what grows', () => {
    const { gain, crowding } = first({ ...quiet, dilutionPerDay: 0.2 })
    expect(gain).toBeCloseTo(Math.exp(0.4), 12)
    expect(crowding).toBeCloseTo(((0.6 / 600) * (Math.exp(0.4) - 1)) / 0.4, 12)
    expect(first({ ...quiet, dilutionPerDay: 0.6 })).toEqual({ gain: 1, crowding: expect.closeTo(0.6 / 600, 12) })
    const falling = first({ ...quiet, dilutionPerDay: 0.9 })
    expect(falling.crowding).toBeCloseTo(((0.6 / 600) * (1 - Math.exp(-0.3))) / 0.3, 12)
  })

  it('follow a spell as it fades and eggs as they are forgotten', () => {
    const logGain = (estimate: CultureEstimate) =>
      expectedCultureDays({ estimate, days: 2 }).days.map(({ gain }) => Math.log(gain) - 0.6)
    expect(logGain(plain)).toEqual(
      [0.1 * Math.exp(-0.25), 0.1 * Math.exp(-0.75)].map((each) => expect.closeTo(each, 12)),
    )
    const seen = { ...quiet, eggs: { day: 4, logEggs: 0.7 } }
    expect(logGain(seen)).toEqual([1.6 * 0.3, 1.6 * 0.15].map((each) => expect.closeTo(each, 12)))
    // Seen half a day before: half of the first day hears of them as they were, half as they are halved.
    expect(logGain({ ...seen, eggs: { day: 3.5, logEggs: 0.7 } })[0]).toBeCloseTo(1.6 * (0.3 + 0.15) * 0.5, 12)
  })

  it('take pieces of a day one after another', () => {
    const { gain, crowding } = first({ ...quiet, eggs: { day: 3.5, logEggs: 0.7 } })
    let log = Math.log(300)
    for (const promised of [0.3, 0.15]) log = logisticStep(log, 0.6 + 1.6 * promised, 0.6 / 600, 0.5).logDensity
    expect((gain * 300) / (1 + crowding * 300)).toBeCloseTo(Math.exp(log), 9)
  })

  it('begin, where they are drawn, with a density that is drawn', () => {
    const drawn = cultureDaysAhead({ estimate: plain, days: 1, seed: 1, futures: 4000 }).map(({ densityPerMl }) =>
      Math.log(densityPerMl),
    )
    const mean = drawn.reduce((sum, each) => sum + each, 0) / drawn.length
    const variance = drawn.reduce((sum, each) => sum + (each - mean) ** 2, 0) / drawn.length
    expect(mean).toBeCloseTo(5, 1)
    expect(variance / 0.04).toBeCloseTo(1, 1)
  })
})

describe('futures of a culture that is known for certain', () => {
  const still = { ...parameters, spellSdPerDay: 1e-9, dailySd: 1e-9, eggSd: 0 }
  const sure: CultureEstimate = {
    ...{ ...plain, parameters: still },
    state: { ...plain.state, spell: 0, varDensity: 0, covariance: 0, varSpell: 0 },
  }
  const one = (plan: Parameters<typeof cultureFutures>[0]['plan'], days = 2) => {
    const { densitiesPerMl, growthPerDay } = cultureFutures({ estimate: sure, plan: plan!, days, seed: 1, futures: 1 })
    return { densities: densitiesPerMl[0]!, growth: growthPerDay[0]! }
  }
  const grown = (density: number, days: number) =>
    Math.exp(logisticStep(Math.log(density), 0.6, 0.001, days).logDensity)
  const start = Math.exp(5)

  it('are cut at a harvest within a day, which that day’s density has lost', () => {
    const { densities } = one([{ day: 4.5, fraction: 0.3 }])
    const first = grown(grown(start, 0.5) * 0.7, 0.5)
    expect(densities).toEqual([expect.closeTo(first, 3), expect.closeTo(grown(first, 1), 3)])
  })

  it('have a harvest on a whole day after it is read, beside that of every day, and hear of none outside', () => {
    const plan = { harvestFractionPerDay: 0.2, removals: [{ day: 5, fraction: 0.5 }] }
    const first = grown(start, 1)
    expect(one(plan).densities).toEqual([expect.closeTo(first, 3), expect.closeTo(grown(first * 0.8 * 0.5, 1), 3)])
    const outside = [3.9, 6, 6.1].map((day) => ({ day, fraction: 0.5 }))
    expect(one(outside).densities).toEqual(one({}).densities)
    const daily = { harvestFractionPerDay: 0.2 }
    expect(one({ ...daily, removals: outside })).toEqual(one(daily))
    expect(one([{ day: 4, fraction: 0.5 }]).densities[0]).toBeCloseTo(grown(start / 2, 1), 3)
  })

  it('grow by what they would have grown to had nothing been taken', () => {
    const { densities, growth } = one({ harvestFractionPerDay: 0.3 }, 3)
    expect(growth).toBeCloseTo(Math.log(densities[2]! / start / 0.7 ** 2) / 3, 6)
    const now = one([{ day: 4, fraction: 0.5 }], 1)
    expect(now.growth).toBeCloseTo(Math.log(now.densities[0]! / (start / 2)), 6)
  })

  it('crash at the hazard from the first day on', () => {
    const { densitiesPerMl, growthPerDay } = cultureFutures({
      ...{ estimate: sure, days: 2, seed: 1, futures: 4000, crashHazardPerDay: 0.5 },
    })
    const dead = (day: number) => densitiesPerMl.filter((densities) => densities[day] === 0).length / 4000
    expect([dead(0), dead(1)]).toEqual([1 - Math.exp(-0.5), 1 - Math.exp(-1)].map((each) => expect.closeTo(each, 1)))
    expect(growthPerDay.filter((each) => each === Number.NEGATIVE_INFINITY)).toHaveLength(4000 * dead(1))
    expect(cultureFutures({ estimate: sure, days: 1, seed: 1 }).densitiesPerMl).toHaveLength(500)
  })

  it.each([
    ['days is 367; allowed: a whole number from 1 to 366', { days: 367 }],
    ['futures is 20001; allowed: a whole number from 1 to 20000', { futures: 20_001 }],
    ['crashHazardPerDay is -1; allowed: a finite number from 0 per day', { crashHazardPerDay: -1 }],
    ['plan.harvestFractionPerDay is 1; allowed: a share from 0 to below 1', { plan: { harvestFractionPerDay: 1 } }],
    ['removals[0].fraction is 1', { plan: { removals: [{ day: 5, fraction: 1 }] } }],
  ])('are not drawn where %s', (sentence, change) => {
    expect(() => cultureFutures({ estimate: sure, days: 366, seed: 1, futures: 1 })).not.toThrow()
    expect(() => cultureFutures({ estimate: sure, days: 1, seed: 1, ...change })).toThrow(sentence)
  })
})
