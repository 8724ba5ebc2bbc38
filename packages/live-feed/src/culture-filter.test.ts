import { describe, expect, it } from 'vitest'
import { advance, type CultureState, eventsBetween, logisticStep, runFilter, stepNoise } from './culture-filter.ts'
import type { CultureRates } from './culture-parameters.ts'
import { localLevelFilter } from './local-level.ts'
import { seededRandom } from './random.ts'

const rates: CultureRates = {
  growthPerDay: 0.6,
  capacityPerMl: 600,
  eggWeightPerDay: 1.6,
  reversionPerDay: 0.5,
  spellSdPerDay: 0.15,
  dailySd: 0.1,
  handlingSd: 0.1,
}
const conditions = { dilutionPerDay: 0, eggBaseline: 0.4, eggSd: 0, eggCarryOver: 0 }

describe('logisticStep', () => {
  // Pearl & Reed 1920, PNAS 6:275: 2930.3009 / (0.014854 + exp(-0.0313395 (year - 1780))) thousand; from memory.
  it.each([
    [1810, 7228],
    [1830, 13109],
    [1850, 23192],
    [1880, 50177],
    [1910, 91972],
    [9999, 197273],
  ])('follows the census curve from 1790 to %d: %d thousand', (year, population) => {
    const growth = 0.0313395
    const crowding = (growth * 0.014854) / 2930.3009
    const { logDensity } = logisticStep(Math.log(3929), growth, crowding, year - 1790)
    expect(Math.abs(Math.exp(logDensity) / population - 1)).toBeLessThan(3e-4)
  })

  it('gives the same in two halves as in one', () => {
    const half = logisticStep(4, 0.3, 0.001, 0.5).logDensity
    expect(logisticStep(half, 0.3, 0.001, 0.5).logDensity).toBeCloseTo(logisticStep(4, 0.3, 0.001, 1).logDensity, 12)
  })

  it.each([0.7, 1e-7, 0, -0.9])('has the derivatives it says at a growth of %d', (growth) => {
    const at = (x: number, g: number) => logisticStep(x, g, 0.002, 0.8)
    const h = 1e-5
    const { toDensity, toGrowth } = at(5, growth)
    expect(toDensity).toBeCloseTo((at(5 + h, growth).logDensity - at(5 - h, growth).logDensity) / (2 * h), 6)
    expect(toGrowth).toBeCloseTo((at(5, growth + h).logDensity - at(5, growth - h).logDensity) / (2 * h), 5)
  })
})

describe('stepNoise', () => {
  it('has the variances of spells followed in a thousand small steps', () => {
    const random = seededRandom(3)
    const small = 1 / 100
    const paths = 4000
    let sumII = 0
    let sumIU = 0
    let sumUU = 0
    for (let path = 0; path < paths; path += 1) {
      let spell = 0
      let integral = 0
      for (let k = 0; k < 100; k += 1) {
        integral += spell * small
        spell += -0.5 * spell * small + 0.15 * Math.sqrt(2 * 0.5 * small) * random.normal()
      }
      sumII += integral ** 2
      sumIU += integral * spell
      sumUU += spell ** 2
    }
    const noise = stepNoise({ ...rates, dailySd: 1e-9 }, 1)
    expect(Math.abs(sumII / paths / noise.varDensity - 1)).toBeLessThan(0.1)
    expect(Math.abs(sumIU / paths / noise.covariance - 1)).toBeLessThan(0.1)
    expect(Math.abs(sumUU / paths / noise.varSpell - 1)).toBeLessThan(0.1)
  })
})

describe('runFilter', () => {
  it('is the local-level filter when nothing grows and no spell passes', () => {
    const still = { ...rates, growthPerDay: 1e-12, capacityPerMl: 1e9, spellSdPerDay: 1e-9 }
    const series = [4.6, 4.8, 4.5, 4.9, 4.7, 4.4, 4.6]
    const observations = series.map((logDensity, day) => ({
      day,
      densityPerMl: Math.exp(logDensity),
      logDensity,
      countVariance: 0.01,
      logEggs: null,
    }))
    const stretches = series.slice(1).map(() => [])
    const run = runFilter({ observations, stretches, rates: still, conditions })
    const level = localLevelFilter({
      series: series.slice(1),
      observationVariance: 0.02,
      levelVariance: 0.01,
      initialMean: 4.6,
      initialVariance: 0.03,
    })
    expect(run.logLikelihood).toBeCloseTo(level.logLikelihood, 9)
    expect(run.state.logDensity).toBeCloseTo(level.filteredMeans.at(-1) ?? Number.NaN, 9)
    expect(run.state.varDensity).toBeCloseTo(level.filteredVariances.at(-1) ?? Number.NaN, 9)
  })
})

describe('eventsBetween', () => {
  it('gives each harvest to one stretch alone, that of a count’s own day to the one after it', () => {
    const events = [0, 1, 2, 2.5, 3].map((day) => ({ day, keepShare: 0.5, addedPerMl: 0 }))
    const stretches = [0, 2, 3, 4].map((from, index, starts) => eventsBetween(events, from, starts[index + 1] ?? 9))
    expect(stretches.map((each) => each.map(({ day }) => day))).toEqual([[0, 1], [2, 2.5], [3], []])
  })
})

describe('advance', () => {
  const state = { day: 0, logDensity: Math.log(200), spell: 0, varDensity: 0.01, covariance: 0, varSpell: 0.02 }

  it('takes ln(1 - f) off at a harvest and adds animals at an inoculation', () => {
    const events = [{ day: 0, keepShare: 0.8, addedPerMl: 0 }]
    const harvested = advance(state, rates, { toDay: 0, eggs: null, events, conditions })
    expect(harvested.logDensity).toBeCloseTo(Math.log(160), 12)
    expect(harvested.varDensity).toBeCloseTo(0.01, 12)
    const added = [{ day: 0, keepShare: 1, addedPerMl: 200 }]
    const inoculated = advance(state, rates, { toDay: 0, eggs: null, events: added, conditions })
    expect(inoculated.logDensity).toBeCloseTo(Math.log(400), 12)
    // Half of the animals are as uncertain as before, the other half were poured in.
    expect(inoculated.varDensity).toBeCloseTo(0.0025, 12)
  })

  it('comes to capacity when left alone, and to where growth meets dilution when flushed', () => {
    const alone = advance(state, rates, { toDay: 60, eggs: null, events: [], conditions })
    expect(Math.exp(alone.logDensity)).toBeCloseTo(600, 3)
    const flushed = advance(state, rates, {
      toDay: 200,
      eggs: null,
      events: [],
      conditions: { ...conditions, dilutionPerDay: 0.3 },
    })
    expect(Math.exp(flushed.logDensity)).toBeCloseTo(300, 3)
  })

  it('lets eggs speak for one day and then fall back to the usual', () => {
    const eggs = { day: 0, logEggs: 0.6 }
    const wide = { ...rates, capacityPerMl: 1e9 }
    const grownBy = (from: number, to: number, seen: typeof eggs | null) =>
      advance({ ...state, day: from }, wide, { toDay: to, eggs: seen, events: [], conditions }).logDensity -
      state.logDensity
    expect(grownBy(0, 1, eggs) - grownBy(0, 1, null)).toBeCloseTo(1.6 * 0.2, 6)
    expect(grownBy(0, 3, eggs) - grownBy(0, 3, null)).toBeCloseTo(1.6 * 0.2, 6)
    expect(grownBy(1, 2, eggs)).toBeCloseTo(grownBy(1, 2, null), 9)
  })
})

/** The midpoint rule over [0, days], fine enough for eight figures. */
function integral(days: number, f: (at: number) => number): number {
  const steps = 4000
  return (
    Array.from({ length: steps }, (_, k) => f(((k + 0.5) * days) / steps)).reduce((sum, y) => sum + y, 0) *
    (days / steps)
  )
}

describe('a spell', () => {
  // An Ornstein-Uhlenbeck process of rate k and spread s is noise of 2 k s^2 a day that fades as exp(-k t); its integral is
  // noise that has had (1 - exp(-k t)) / k of its effect (Uhlenbeck & Ornstein 1930, Phys. Rev. 36:823-841).
  it.each([0.3, 1])('adds over %d days what its noise adds, moment by moment', (days) => {
    const { reversionPerDay: k, spellSdPerDay: s } = rates
    const left = (t: number) => Math.exp(-k * t)
    const felt = (t: number) => (1 - left(t)) / k
    const noise = stepNoise(rates, days)
    expect(noise.left).toBeCloseTo(left(days), 12)
    expect(noise.meanShare).toBeCloseTo(integral(days, left) / days, 7)
    const per = 2 * k * s * s
    expect(noise.varSpell).toBeCloseTo(per * integral(days, (t) => left(t) ** 2), 9)
    expect(noise.covariance).toBeCloseTo(per * integral(days, (t) => felt(t) * left(t)), 9)
    // What a day adds unexplained is besides.
    expect(noise.varDensity).toBeCloseTo(per * integral(days, (t) => felt(t) ** 2) + rates.dailySd ** 2 * days, 9)
  })

  it('adds nothing below nothing in a moment', () => {
    for (const days of [1e-9, 1e-7, 1e-5, 3e-5])
      expect(stepNoise({ ...rates, dailySd: 1e-12 }, days).varDensity).toBeGreaterThanOrEqual(0)
  })
})

describe('a state carried on', () => {
  const thin = { ...rates, capacityPerMl: 1e12 }
  const begun: CultureState = {
    ...{ day: 2, logDensity: 4, spell: 0.2, varDensity: 0.03, covariance: 0.004, varSpell: 0.02 },
  }
  const carry = (from: CultureState, to: number, eggSd = 0, given = thin) =>
    advance(from, given, { toDay: to, eggs: null, events: [], conditions: { ...conditions, eggSd } })

  it('is the same in two pieces as in one, where nothing crowds', () => {
    const [once, twice] = [carry(begun, 2.9), carry(carry(begun, 2.3), 2.9)]
    for (const name of ['day', 'logDensity', 'spell', 'varDensity', 'covariance', 'varSpell'] as const)
      expect(twice[name], name).toBeCloseTo(once[name], 9)
  })

  it('grows by its rate and its spell, and feels both their doubts', () => {
    // Linear in density and spell: x + r + u m and u left, m = (1 - left) / k over a day, and so for their covariance.
    const left = Math.exp(-0.5)
    const m = (1 - left) / 0.5
    const noise = stepNoise(rates, 1)
    const next = carry(begun, 3)
    expect(next.logDensity).toBeCloseTo(4 + 0.6 + 0.2 * m, 9)
    expect(next.spell).toBeCloseTo(0.2 * left, 12)
    expect(next.varDensity).toBeCloseTo(0.03 + 2 * m * 0.004 + m * m * 0.02 + noise.varDensity, 9)
    expect(next.covariance).toBeCloseTo(left * (0.004 + m * 0.02) + noise.covariance, 9)
    expect(next.varSpell).toBeCloseTo(left * left * 0.02 + noise.varSpell, 12)
    // Eggs that nobody counted: an unknown 1.6 * 0.25 of growth for a day.
    expect(carry(begun, 3, 0.25).varDensity - next.varDensity).toBeCloseTo((1.6 * 0.25) ** 2, 9)
  })

  it('is crowded by its own animals: its doubt shrinks as the logistic’s slope does', () => {
    const still = { ...rates, spellSdPerDay: 1e-9, dailySd: 1e-9 }
    const at = (logDensity: number) =>
      carry({ ...begun, day: 0, logDensity, spell: 0, covariance: 0, varSpell: 0 }, 1, 0, still)
    const slope = (at(6 + 1e-4).logDensity - at(6 - 1e-4).logDensity) / 2e-4
    expect(slope).toBeLessThan(0.8)
    expect(at(6).varDensity / 0.03).toBeCloseTo(slope ** 2, 6)
    // Logistic in closed form: K / (1 + (K / N - 1) exp(-r)). Verhulst 1838, Corr. math. phys. 10:113-121.
    expect(Math.exp(at(6).logDensity)).toBeCloseTo(600 / (1 + (600 / Math.exp(6) - 1) * Math.exp(-0.6)), 6)
  })

  it('in a crowd doubts what its density, its spell and its eggs do to it (delta method, by differences)', () => {
    const days = 0.7
    const crowded = { ...begun, day: 0, logDensity: 6, covariance: 0.01 }
    const to = (x: number, u: number, dilutionPerDay = 0) =>
      advance({ ...crowded, logDensity: x, spell: u }, rates, {
        ...{ toDay: days, eggs: null, events: [], conditions: { ...conditions, dilutionPerDay } },
      }).logDensity
    const h = 1e-5
    const byX = (to(6 + h, 0.2) - to(6 - h, 0.2)) / (2 * h)
    const byU = (to(6, 0.2 + h) - to(6, 0.2 - h)) / (2 * h)
    const byGrowth = (to(6, 0.2, -h) - to(6, 0.2, h)) / (2 * h)
    const noise = stepNoise(rates, days)
    const after = carry(crowded, days, 0.25, rates)
    expect(after.varDensity - noise.varDensity).toBeCloseTo(
      byX ** 2 * 0.03 + 2 * byX * byU * 0.01 + byU ** 2 * 0.02 + byGrowth ** 2 * (1.6 * 0.25) ** 2,
      7,
    )
    expect(after.covariance - noise.covariance).toBeCloseTo(noise.left * (byX * 0.01 + byU * 0.02), 7)
  })

  it('goes through a harvest on its day, and what was put in is no part of the spell', () => {
    const events = [{ day: 2.5, keepShare: 0.5, addedPerMl: Math.exp(4) }]
    const now = advance({ ...begun, day: 2.5 }, thin, { toDay: 2.5, eggs: null, events, conditions })
    expect(now).toEqual({
      ...{ day: 2.5, logDensity: expect.closeTo(4, 12), spell: 0.2, varSpell: 0.02 },
      ...{ varDensity: expect.closeTo(0.03 / 4, 12), covariance: expect.closeTo(0.002, 12) },
    })
    const taken = [{ day: 2.5, keepShare: 0.5, addedPerMl: 0 }]
    const later = advance(begun, thin, { toDay: 2.9, eggs: null, events: taken, conditions })
    expect(later.logDensity).toBeCloseTo(carry(begun, 2.9).logDensity + Math.log(0.5), 9)
  })
})

describe('a count', () => {
  const at = (day: number, logDensity: number, logEggs: number | null = null) => ({
    ...{ day, densityPerMl: Math.exp(logDensity), logDensity, countVariance: 0.02, logEggs },
  })
  const run = (...observations: ReturnType<typeof at>[]) =>
    runFilter({ observations, stretches: observations.slice(1).map(() => []), rates, conditions })

  it('that is the first is believed but for its error, and says nothing of a spell', () => {
    expect(run(at(1, 5))).toEqual({
      ...{ predictions: [], eggs: null, logLikelihood: 0 },
      state: {
        ...{ day: 1, logDensity: 5, spell: 0, covariance: 0 },
        ...{ varDensity: expect.closeTo(0.02 + 0.01, 12), varSpell: expect.closeTo(0.0225, 12) },
      },
    })
  })

  it('adds its own sureness to what was expected: the inverse covariances add up (Kalman 1960, J. Basic Eng. 82:35-45)', () => {
    const before = advance(run(at(0, 4)).state, rates, { toDay: 1, eggs: null, events: [], conditions })
    const { state, predictions, logLikelihood } = run(at(0, 4), at(1, 5))
    const inverse = ({ varDensity: a, covariance: b, varSpell: c }: CultureState) => {
      const determinant = a * c - b * b
      return [c / determinant, -b / determinant, a / determinant] as const
    }
    const [was, is] = [inverse(before), inverse(state)]
    const counted = 1 / (0.02 + 0.1 ** 2)
    expect(is[0] - was[0]).toBeCloseTo(counted, 6)
    expect([is[1], is[2]]).toEqual([expect.closeTo(was[1], 6), expect.closeTo(was[2], 6)])
    // And the means weigh by them.
    const dx = state.logDensity - before.logDensity
    const du = state.spell - before.spell
    expect(is[0] * dx + is[1] * du).toBeCloseTo(counted * (5 - before.logDensity), 6)
    expect(is[1] * dx + is[2] * du).toBeCloseTo(0, 6)
    const variance = before.varDensity + 1 / counted
    expect(predictions).toEqual([
      {
        ...{ logDensity: before.logDensity, variance: expect.closeTo(variance, 12) },
        logLikelihood: expect.closeTo(
          -Math.log(Math.sqrt(2 * Math.PI * variance)) - (5 - before.logDensity) ** 2 / (2 * variance),
          9,
        ),
      },
    ])
    expect(logLikelihood).toBe(predictions[0]!.logLikelihood)
    expect(state.day).toBe(1)
  })

  it('without eggs leaves those that were seen before, and one with eggs takes their place', () => {
    expect(run(at(0, 4, 0.3), at(1, 5)).eggs).toEqual({ day: 0, logEggs: 0.3 })
    expect(run(at(0, 4, 0.3), at(1, 5, 0.7)).eggs).toEqual({ day: 1, logEggs: 0.7 })
    const promised = (logEggs: number) => run(at(0, 4, logEggs), at(1, 5)).predictions[0]!.logDensity
    expect(promised(0.6)).toBeGreaterThan(promised(0.4) + 0.25)
  })
})
