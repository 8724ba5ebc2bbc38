import { describe, expect, it } from 'vitest'
import { capacityPrior } from './capacity-prior.ts'
import { growthPrior } from './growth-prior.ts'
import { studentDeviate } from './student.ts'

describe('growth expected of a culture that was never counted', () => {
  const bySalinity = (salinity: number) => growthPrior({ temperatureC: 25, salinity }).growthPerDay

  it('lies straight between the published bands, and level beyond the first (Lubzens, Minkoff & Marom 1985)', () => {
    // The middles of 0.50-0.85 at 20 and of 0.40-0.50 at 30 are 0.675 and 0.45; between them 0.5625.
    expect([1, 2, 20, 25, 30].map(bySalinity)).toEqual(
      [0.45, 0.45, 0.675, 0.5625, 0.45].map((n) => expect.closeTo(n, 9)),
    )
    expect(bySalinity(3)).toBeCloseTo((0.45 + 0.675) / 2, 9)
  })

  it('halves for every ten of salinity beyond 35', () => {
    expect(bySalinity(45) / bySalinity(35)).toBeCloseTo(0.5, 9)
    expect(bySalinity(40) / bySalinity(35)).toBeCloseTo(Math.SQRT1_2, 9)
  })

  it('is that of a freshwater rotifer in fresh water: 1.02 a day at most, less deaths (Rothhaupt 1990)', () => {
    const fresh = growthPrior({ temperatureC: 25, salinity: 0.9 })
    expect(fresh.growthPerDay).toBeGreaterThan(1.02 - 0.383)
    expect(fresh.growthPerDay).toBeLessThan(1.02 - 0.083)
    expect(fresh.sources[0]).toContain('Rothhaupt')
    expect(growthPrior({ salinity: 1 }).sources[0]).toContain('Lubzens')
  })

  it('falls in the cold as the life table does: 0.468, 0.672 and 0.977 a day at 15, 20 and 25 C (FAO 361, Table 3.1)', () => {
    const share = (temperatureC: number) => growthPrior({ temperatureC, salinity: 20 }).growthPerDay / bySalinity(20)
    expect(share(20)).toBeCloseTo(0.672 / 0.977, 3)
    expect(share(17.5)).toBeCloseTo((0.468 + 0.672) / 2 / 0.977, 3)
    // Five degrees further down the same share is lost again.
    expect(share(10) / ((0.468 / 0.977) * (0.468 / 0.672))).toBeCloseTo(1, 2)
    expect(share(30)).toBe(1)
  })

  it('in a vessel kept by hand is half-way to a batch on dry diet, which doubles in two days (FAO 361, sect. 3.5)', () => {
    const { growthPerDay, keptGrowthPerDay } = growthPrior({ temperatureC: 25, salinity: 20 })
    expect(keptGrowthPerDay ** 2).toBeCloseTo((growthPerDay * Math.LN2) / 2, 9)
  })

  it('reaches from 0.25 to 1.8 a day in two standard deviations, and farther where something is not known', () => {
    const sure = growthPrior({ temperatureC: 22, salinity: 20, strain: 'L' })
    const at25 = growthPrior({ temperatureC: 25, salinity: 20 }).growthPerDay
    expect(at25 * Math.exp(-2 * sure.logSd)).toBeCloseTo(0.25, 2)
    expect(at25 * Math.exp(2 * sure.logSd)).toBeCloseTo(1.83, 2)
    for (const unsure of [
      { temperatureC: 22 },
      { salinity: 20 },
      { temperatureC: 29, salinity: 20, strain: 'L' as const },
    ])
      expect(growthPrior(unsure).logSd).toBeGreaterThan(1.2 * sure.logSd)
  })

  it.each([
    [{ temperatureC: 15, salinity: 35 }, false],
    [{ temperatureC: 14.9, salinity: 20 }, true],
    [{ temperatureC: 30, salinity: 20 }, false],
    [{ temperatureC: 30.1, salinity: 20 }, true],
    [{ temperatureC: 25, salinity: 35.1 }, true],
    [{}, false],
  ])('of %j is said to be extrapolated: %s', (conditions, isExtrapolated) => {
    expect(growthPrior(conditions).isExtrapolated).toBe(isExtrapolated)
  })

  it.each([
    ['temperatureC is 4.9; allowed: a number from 5 to 35 C', { temperatureC: 4.9 }],
    ['temperatureC is 36', { temperatureC: 36 }],
    ['salinity is 98; allowed: a number from 0 to 97', { salinity: 98 }],
  ])('is refused where %s', (sentence, conditions) => {
    expect(() => growthPrior(conditions)).toThrow(sentence)
    expect(() => growthPrior({ temperatureC: 35, salinity: 97 })).not.toThrow()
  })
})

describe('what growth is expected from', () => {
  it('is the band of 4 to 20 where no salinity is said, and 25 C where no temperature is', () => {
    const said = (salinity: number) => growthPrior({ temperatureC: 25, salinity }).growthPerDay
    expect([4, 10, 15].map(said)).toEqual([0.675, 0.675, 0.675].map((each) => expect.closeTo(each, 9)))
    expect(said(35)).toBeCloseTo(0.28, 9)
    for (const conditions of [{}, { salinity: 10 }, { temperatureC: 25 }])
      expect(growthPrior(conditions).growthPerDay).toBeCloseTo(0.675, 9)
  })

  it('is cooler for a vessel kept by hand as for a clone', () => {
    const { growthPerDay, keptGrowthPerDay } = growthPrior({ temperatureC: 20, salinity: 10 })
    expect(keptGrowthPerDay ** 2 / growthPerDay).toBeCloseTo(((Math.LN2 / 2) * 0.672) / 0.977, 3)
  })

  it('is a quarter less sure for each strain away from its best, or where something is not known', () => {
    const doubt = (conditions: Parameters<typeof growthPrior>[0]) => growthPrior(conditions).logSd / 0.5
    expect(doubt({ temperatureC: 25, salinity: 20 })).toBe(1)
    expect(doubt({ temperatureC: 25, salinity: 20, strain: 'L' })).toBe(1)
    expect(doubt({ temperatureC: 25, salinity: 20, strain: 'S' })).toBe(1.25)
    expect([doubt({ salinity: 20 }), doubt({ temperatureC: 25 }), doubt({})]).toEqual([1.25, 1.25, 1.25])
  })

  // Best: L 18-25 C, S 28-35 C (FAO 361, sect. 3.4); SS is taken with S.
  it.each([
    ['L', [17.9, 18, 25, 25.1]],
    ['S', [27.9, 28, 35]],
    ['SS', [27.9, 28, 35]],
  ] as const)('%s is at its best from the second of %j to the third', (strain, temperatures) => {
    const isBest = temperatures.map((temperatureC) => growthPrior({ temperatureC, strain }).isAtBestTemperature)
    expect(isBest).toEqual([false, true, true, false].slice(0, temperatures.length))
    expect([growthPrior({ strain }), growthPrior({ temperatureC: 20 })]).toEqual([
      expect.objectContaining({ isAtBestTemperature: null }),
      expect.objectContaining({ isAtBestTemperature: null }),
    ])
  })

  it('falls on below 15 C by the slope from 20 to 15, down to 5', () => {
    const at = (temperatureC: number) => growthPrior({ temperatureC, salinity: 0 }).growthPerDay
    expect(at(5) / at(15)).toBeCloseTo((0.468 / 0.672) ** 2, 2)
    expect(at(15) / at(25)).toBeCloseTo(0.468 / 0.977, 3)
  })

  it('is said', () => {
    const { sources } = growthPrior({ salinity: 20 })
    expect(sources).toEqual([
      ...[expect.stringContaining('Lubzens'), expect.stringContaining('Table 3.1'), 'spread: common practice'],
    ])
    expect(growthPrior({}).sources).toEqual(sources)
  })
})

describe('what a vessel is expected to hold', () => {
  it('lies between a poor one and the densest tanks kept by hand: 320 to 1,600 per mL (Pfeiffer & Ludwig 2007)', () => {
    const { capacityPerMl, logSd } = capacityPrior({ temperatureC: 25 })!
    expect((capacityPerMl * Math.exp(-2 * logSd)) / 320).toBeCloseTo(1, 1)
    expect((capacityPerMl * Math.exp(2 * logSd)) / 1600).toBeCloseTo(1, 1)
  })

  it('is less sure for small strains, and unsaid in fresh water or where nothing is known', () => {
    const doubt = (strain: 'L' | 'S' | 'SS') => capacityPrior({ strain })!.logSd
    expect(doubt('S')).toBeGreaterThan(doubt('L'))
    // An eighth: common practice.
    expect(doubt('S') / doubt('L')).toBeCloseTo(9 / 8, 9)
    expect(doubt('SS')).toBe(doubt('S'))
    expect(capacityPrior({ strain: 'L' })!.sources).toEqual([
      ...[expect.stringContaining('FAO'), expect.stringContaining('Pfeiffer'), 'spread: common practice'],
    ])
    for (const salinity of [-1, 97.1])
      expect(() => capacityPrior({ salinity })).toThrow('allowed: a number from 0 to 97')
    expect([capacityPrior({ salinity: 97 }), capacityPrior({ salinity: 0 })]).toEqual([expect.anything(), null])
    expect(capacityPrior({})).toBeNull()
    expect(capacityPrior({ salinity: 0.9, strain: 'L' })).toBeNull()
    expect(capacityPrior({ salinity: 1 })).not.toBeNull()
    expect(() => capacityPrior({ salinity: 98 })).toThrow('salinity is 98')
  })
})

// Student's t, two-sided: Fisher & Yates 1938, Statistical Tables, table III.
it.each([
  [0.95, 1, 12.706],
  [0.95, 10, 2.228],
  [0.99, 5, 4.032],
  [0.8, 3, 1.638],
  [0.95, 1e6, 1.96],
])('of %d in the middle with %d degrees of freedom the deviate is %d', (level, degrees, deviate) => {
  expect(studentDeviate(level, degrees)).toBeCloseTo(deviate, 3)
})
