import { describe, expect, it } from 'vitest'
import { type CultureEstimate, estimateCulture } from './culture-estimate.ts'
import { fitCulture } from './culture-fit.ts'
import type { CultureParameters } from './culture-parameters.ts'
import { HARVEST_PRACTICE, type HarvestAdviceInput, harvestAdvice, shareAboveFloor } from './harvest-advice.ts'
import { seededRandom } from './random.ts'
import { steadyHarvest } from './steady-harvest.ts'

const history = {
  observations: [80, 120, 175, 250].map((densityPerMl, day) => ({ day, densityPerMl, animalsCounted: 150 })),
  removals: [],
  temperatureC: 26,
  salinity: 20,
}
const fitted = fitCulture(history)
const estimated = estimateCulture(history, fitted)

/** A culture whose rates are known for certain, from many counts. */
const certain = fitted.logCovariance.map((row, i) => row.map((_, j) => (i === j ? 1e-12 : 0)))
const known: CultureParameters = {
  ...fitted,
  growthPerDay: 0.5,
  capacityPerMl: 600,
  logCovariance: certain,
  observations: 20,
}

/** That culture at a density, growing as its rates say. */
function at(densityPerMl: number, parameters = known): CultureEstimate {
  const growthPerDay = parameters.growthPerDay * (1 - densityPerMl / parameters.capacityPerMl)
  return { ...estimated, parameters, densityPerMl, growthPerDay }
}
const advise = (estimate: CultureEstimate, change: Partial<HarvestAdviceInput> = {}) =>
  harvestAdvice({ estimate, volumeL: 16, ageDays: 10, ...change })

describe('steadyHarvest', () => {
  // A logistic culture regrows R S / (1 + (R - 1) S / K) from S in a day, R = exp(r): its surplus is greatest at
  // S = K / (1 + sqrt(R)), where 1 - 1 / sqrt(R) of what has regrown can go every day (calculus).
  it.each([
    [0.2, 400],
    [0.5, 600],
    [0.8, 1000],
  ])('holds a culture of %d a day and %d per mL where its daily surplus is greatest', (growthPerDay, capacityPerMl) => {
    const root = Math.exp(growthPerDay / 2)
    const steady = steadyHarvest({ ...known, growthPerDay, capacityPerMl }, { dilutionPerDay: 0, seed: 1 })
    expect(Math.abs(steady.heldPerMl / (capacityPerMl / (1 + root)) - 1)).toBeLessThan(0.03)
    expect(Math.abs(steady.shareOfVolume - (1 - 1 / root))).toBeLessThan(0.01)
  })

  it('has nothing to give where dilution takes as much as grows', () => {
    expect(steadyHarvest(known, { dilutionPerDay: 0.6, seed: 1 }).shareOfVolume).toBe(0)
    expect(steadyHarvest(known, { dilutionPerDay: 0.5, seed: 1 }).shareOfVolume).toBe(0)
  })

  it('gives less when it dilutes itself', () => {
    const share = (dilutionPerDay: number) => steadyHarvest(known, { dilutionPerDay, seed: 1 }).shareOfVolume
    expect(share(0.2)).toBeLessThan(share(0))
    expect(share(0.2)).toBeGreaterThan(0)
  })
})

describe('harvestAdvice', () => {
  it('takes what regrows where the culture gives most: 22 % at 0.5 a day', () => {
    const { regrownPerMl } = steadyHarvest(known, { dilutionPerDay: 0, seed: 1 })
    const advice = advise(at(regrownPerMl))
    expect(advice).toMatchObject({ reason: 'ready', boundedBy: 'sustainable' })
    expect(advice.shareOfVolume).toBeCloseTo(advice.sustainableShare, 12)
    expect(Math.abs(advice.shareOfVolume - (1 - Math.exp(-0.25)))).toBeLessThan(0.01)
    expect(advice.litres).toBeCloseTo(16 * advice.shareOfVolume, 12)
    expect(advice.densityAfterPerMl).toBeCloseTo(advice.heldPerMl, 9)
  })

  it('takes more from a crowded culture and less from a thinner one, from day to day towards the density it holds', () => {
    const shares = [260, 300, 340, 450, 590].map((density) => advise(at(density)).shareOfVolume)
    expect(shares).toEqual([...shares].sort((a, b) => a - b))
    expect(shares[0]).toBeLessThan(0.15)
    expect(shares.at(-1)).toBeGreaterThan(0.35)
  })

  it('is a jug or nothing: a twentieth at least, and none from a culture too thin to be worth it', () => {
    expect(advise(at(200))).toMatchObject({ shareOfVolume: 0.05, reason: 'ready' })
    expect(advise(at(170))).toMatchObject({ litres: 0, reason: 'too-thin', boundedBy: 'density' })
    for (let density = 100; density < 600; density += 7) {
      const { shareOfVolume } = advise(at(density))
      expect(shareOfVolume === 0 || shareOfVolume >= HARVEST_PRACTICE.smallestFraction).toBe(true)
    }
  })

  it('never takes more than half, or than the room allows', () => {
    const fast = at(900, { ...known, growthPerDay: 3, capacityPerMl: 1000 })
    expect(advise(fast)).toMatchObject({ shareOfVolume: 0.5, boundedBy: 'maximum' })
    expect(advise(fast, { maximumFraction: 0.3 }).shareOfVolume).toBe(0.3)
    expect(advise(fast, { maximumFraction: 0.03 }).shareOfVolume).toBe(0.03)
  })

  it('takes no more than the usual fifth while few counts speak for the culture', () => {
    const crowded = at(500, { ...known, observations: 3 })
    expect(advise(crowded)).toMatchObject({ shareOfVolume: 0.2, boundedBy: 'usual', reason: 'ready' })
    expect(advise(crowded, { usualFraction: 0.1 }).shareOfVolume).toBe(0.1)
    expect(advise(at(500), { usualFraction: 0.1 }).shareOfVolume).toBeGreaterThan(0.2)
  })

  it('takes a culture for falling from a twentieth a day on, about the error of a good count: common practice', () => {
    const reasonAt = (growthPerDay: number) => advise({ ...at(250), growthPerDay }).reason
    expect([-0.049, -0.051].map(reasonAt)).toEqual(['ready', 'falling'])
    // Full from nine tenths of what it holds on, where it grows no more.
    const fullAt = (density: number) => advise({ ...at(density), growthPerDay: -0.9 }).reason
    expect([539, 541].map(fullAt)).toEqual(['falling', 'ready'])
  })

  it('takes nothing from a falling culture, and does not take a full one for falling', () => {
    const falling = { ...at(350), growthPerDay: -0.3 }
    expect(advise(falling)).toMatchObject({ litres: 0, reason: 'falling', boundedBy: 'trend' })
    const full = advise({ ...at(590), growthPerDay: -0.6 })
    expect(full.reason).toBe('ready')
    expect(full.shareOfVolume).toBeGreaterThan(0.3)
  })

  it('keeps a culture above its floor, and takes nothing rather than less than a jug', () => {
    const { lower80PerMl } = at(300)
    const advice = advise(at(300), { densityPerMl: 300, floorPerMl: 0.9 * lower80PerMl })
    expect(advice.shareOfVolume).toBeCloseTo(0.1, 12)
    expect(advice.densityAfterPerMl).toBeCloseTo(270, 9)
    expect(advice).toMatchObject({ reason: 'held-back', boundedBy: 'floor' })
    expect(advise(at(300), { floorPerMl: 290 })).toMatchObject({ litres: 0, reason: 'held-back', boundedBy: 'floor' })
    expect(advise(at(300), { floorPerMl: 300 })).toMatchObject({ litres: 0, reason: 'too-thin', boundedBy: 'floor' })
  })

  it('goes by today’s own count where one is given', () => {
    expect(advise(at(250), { densityPerMl: 400 }).shareOfVolume).toBeCloseTo(advise(at(400)).shareOfVolume, 12)
  })

  it('waits with the first harvest for three days, 150 per mL and a rise', () => {
    const small = { ...known, capacityPerMl: 350 }
    const first = { isFirstHarvest: true }
    expect(advise(at(200, small), { ...first, ageDays: 2 })).toMatchObject({ litres: 0, reason: 'too-young' })
    expect(advise(at(149, small), first)).toMatchObject({ litres: 0, reason: 'too-thin', boundedBy: 'density' })
    const still = { ...at(200, small), growthPerDay: -0.1 }
    expect(advise(still, first)).toMatchObject({ litres: 0, reason: 'not-rising' })
    expect(advise(at(150, small), { ...first, ageDays: 3 }).shareOfVolume).toBeGreaterThanOrEqual(0.05)
    expect(advise(at(149, small)).shareOfVolume).toBeGreaterThanOrEqual(0.05)
  })

  it('gives the same advice for the same seed, and nearly the same for another', () => {
    const shares = [1, 1, 2].map((seed) => advise(estimated, { densityPerMl: 400, seed }).shareOfVolume)
    expect(shares[1]).toBe(shares[0])
    expect(Math.abs(shares[2]! - shares[0]!)).toBeLessThan(0.03)
  })

  it.each([
    ['volumeL', { volumeL: 0 }],
    ['ageDays', { ageDays: -1 }],
    ['densityPerMl', { densityPerMl: Number.NaN }],
    ['floorPerMl', { floorPerMl: -1 }],
    ['usualFraction', { usualFraction: 1 }],
    ['maximumFraction', { maximumFraction: -0.1 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => advise(at(300), change)).toThrow(argument)
  })
})

describe('what an advice rests on', () => {
  const { heldPerMl, regrownPerMl } = steadyHarvest(known, { dilutionPerDay: 0, seed: 1 })

  it('is six tenths of the way from a density to the one worth holding', () => {
    const left = (density: number) => 1 - advise(at(density)).shareOfVolume
    expect(Math.log(left(400) / left(500)) / Math.log(500 / 400)).toBeCloseTo(0.6, 9)
    expect(left(regrownPerMl)).toBeCloseTo(heldPerMl / regrownPerMl, 9)
    expect(advise(at(400))).toMatchObject({ heldPerMl, sustainableShare: 1 - heldPerMl / regrownPerMl })
  })

  it('is nothing under seven tenths of the density worth holding', () => {
    expect(advise(at(0.69 * heldPerMl))).toEqual({
      ...{ shareOfVolume: 0, litres: 0, reason: 'too-thin', boundedBy: 'density', heldPerMl },
      ...{ sustainableShare: 1 - heldPerMl / regrownPerMl, densityAfterPerMl: 0.69 * heldPerMl },
    })
    expect(advise(at(0.71 * heldPerMl)).shareOfVolume).toBe(0.05)
  })

  it('is four counts before a culture is known', () => {
    const after = (observations: number) => advise(at(500, { ...known, observations })).boundedBy
    expect([3, 4].map(after)).toEqual(['usual', 'sustainable'])
  })

  it('is no fall where crowding alone slows a culture that is denser than is worth holding', () => {
    // At 450 crowding takes 0.5 * (450 - held) / 600 a day more than at the density held.
    const crowded = (0.5 * (450 - heldPerMl)) / 600
    const reason = (growthPerDay: number) => advise({ ...at(450), growthPerDay: growthPerDay - crowded }).reason
    expect([-0.049, -0.051].map(reason)).toEqual(['ready', 'falling'])
    const first = (growthPerDay: number) => advise({ ...at(250), growthPerDay }, { isFirstHarvest: true }).reason
    expect([0, 0.001].map(first)).toEqual(['not-rising', 'ready'])
  })

  it('is the room’s own age and density for a first harvest where it has one', () => {
    const young = (ageDays: number) => advise(at(250), { ageDays, firstHarvestAgeDays: 5 })
    expect(young(4.9)).toMatchObject({ reason: 'too-young', boundedBy: 'age', litres: 0 })
    expect(young(5).reason).toBe('ready')
    const first = { isFirstHarvest: true, firstHarvestPerMl: 260 }
    expect(advise(at(259), first)).toMatchObject({ reason: 'too-thin', boundedBy: 'density' })
    expect(advise(at(260), first).reason).toBe('ready')
    expect(advise(at(259), { firstHarvestPerMl: 260 }).reason).toBe('ready')
    const still = { ...at(250), growthPerDay: -0.01 }
    expect(advise(still, { isFirstHarvest: true }).boundedBy).toBe('trend')
    expect(advise(still).reason).toBe('ready')
  })

  it('is a room’s own share though it be less than a jug', () => {
    const few = at(500, { ...known, observations: 3 })
    expect(advise(few, { usualFraction: 0.03 })).toMatchObject({ shareOfVolume: 0.03, reason: 'ready' })
    expect(advise(at(500), { maximumFraction: 0.05 })).toMatchObject({ shareOfVolume: 0.05, boundedBy: 'maximum' })
    // A jug to the drop above the floor is one.
    const { lower80PerMl } = at(300)
    const above = (share: number) => advise(at(300), { floorPerMl: (1 - share) * lower80PerMl })
    expect(above(0.053).reason).toBe('held-back')
    expect(above(0.053).litres).toBeCloseTo(0.053 * 16, 9)
    expect(above(0.047).litres).toBe(0)
  })

  it.each([
    ['volumeL is 0; allowed: a finite number above 0 L', { volumeL: 0 }],
    ['ageDays is -1; allowed: a finite number from 0 days', { ageDays: -1 }],
    ['densityPerMl is -1; allowed: a finite number from 0 per mL', { densityPerMl: -1 }],
    ['floorPerMl is -1; allowed: a finite number from 0 per mL', { floorPerMl: -1 }],
    ['usualFraction is 1; allowed: a share from 0 to below 1', { usualFraction: 1 }],
    ['maximumFraction is 1; allowed: a share from 0 to below 1', { maximumFraction: 1 }],
  ])('is refused where %s', (sentence, change) => {
    expect(() => advise(at(300), change)).toThrow(sentence)
    expect(advise(at(0), { ageDays: 0, floorPerMl: 0 }).reason).toBe('too-young')
    expect(advise(at(0))).toMatchObject({ reason: 'too-thin', boundedBy: 'floor' })
  })

  it('is what is held by a culture that gives nothing: all of it', () => {
    expect(steadyHarvest(known, { dilutionPerDay: 0.6 })).toEqual({
      ...{ heldPerMl: 600, regrownPerMl: 600, shareOfVolume: 0 },
    })
    expect(steadyHarvest(known)).toEqual({ heldPerMl, regrownPerMl, shareOfVolume: 1 - heldPerMl / regrownPerMl })
  })

  it('is the best for all rates that are likely: their surpluses are averaged, and those that would shrink give none', () => {
    // With growth known to a factor and capacity for certain, the mean surplus at the density held by 20,000 other draws.
    const doubt = known.logCovariance.map((row, i) => row.map((each, j) => (i === 0 && j === 0 ? 0.25 : each)))
    const steady = steadyHarvest({ ...known, logCovariance: doubt })
    const random = seededRandom(9)
    const growths = Array.from({ length: 20_000 }, () => 0.5 * Math.exp(0.5 * random.normal()))
    const surplusAt = (held: number) =>
      growths.reduce((sum, growth) => {
        const times = Math.exp(growth)
        return sum + Math.max(0, (times * held) / (1 + ((times - 1) / 600) * held) - held)
      }, 0) / growths.length
    expect((steady.regrownPerMl - steady.heldPerMl) / surplusAt(steady.heldPerMl)).toBeCloseTo(1, 1)
    for (const times of [0.8, 1.25])
      expect(surplusAt(steady.heldPerMl)).toBeGreaterThan(surplusAt(steady.heldPerMl * times))
  })
})

describe('what may go above a floor', () => {
  const counted = { densityPerMl: 100, lower80PerMl: 80 }
  const above = (densityPerMl: number, floorPerMl = 50) =>
    shareAboveFloor({ estimate: counted, densityPerMl, floorPerMl })

  it('leaves the floor though the counts be as much too high as one in ten is', () => {
    // 100 counted may be 80: 1 - 50 / 80.
    expect(above(100)).toBeCloseTo(0.375, 12)
    // Another count is taken to be as doubtful: 200 may be 160.
    expect(above(200)).toBeCloseTo(1 - 50 / 160, 12)
    expect(above(100, 0)).toBe(1)
  })

  it('is nothing at the floor and of nothing', () => {
    expect([above(62), above(0), above(0, 0)]).toEqual([0, 0, 0])
    expect(above(63)).toBeGreaterThan(0)
  })
})
