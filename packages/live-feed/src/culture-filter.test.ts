import { describe, expect, it } from 'vitest'
import { advance, eventsBetween, logisticStep, runFilter, stepNoise } from './culture-filter.ts'
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
    const run = runFilter({ observations, stretches: [], rates: still, conditions })
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
