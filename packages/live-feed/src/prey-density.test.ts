import { describe, expect, it } from 'vitest'
import { learnGrazing } from './grazing.ts'
import { preyTopUp } from './prey-density.ts'

const tank = { targetPerMl: 8, residualPerMl: 3, volumeL: 40, hoursUntilNextFeed: 6 }

describe('preyTopUp', () => {
  it('fills up to the target', () => {
    const topUp = preyTopUp(tank)
    expect(topUp.animalsToAdd).toBe(200_000)
    expect(topUp.grazing).toBe('unknown')
    expect(topUp.densityAfterPerMl).toBe(8)
    expect(topUp.cultureMl).toBeNull()
  })

  it('adds what will be eaten and what will be flushed out', () => {
    const topUp = preyTopUp({ ...tank, larvae: 300, eatenPerLarvaPerHour: 50, dilutionPerDay: 1 })
    expect(topUp.expectedGrazing).toBe(90_000)
    // A quarter of a day at one volume a day washes out 1 - exp(-1/4).
    expect(topUp.expectedFlushing).toBeCloseTo(320_000 * (1 - Math.exp(-0.25)), 6)
    expect(topUp.animalsToAdd).toBeCloseTo(200_000 + 90_000 + topUp.expectedFlushing, 6)
    expect(topUp.grazing).toBe('learned')
  })

  it('counts prey that a water change took since the count', () => {
    expect(preyTopUp({ ...tank, waterExchangedFraction: 0.5 }).animalsToAdd).toBe((8 - 1.5) * 40_000)
  })

  it('asks for more culture than it adds, a tenth being lost in the sieve', () => {
    expect(preyTopUp({ ...tank, densityOfCulturePerMl: 500 }).cultureMl).toBeCloseTo(200_000 / (500 * 0.9), 9)
  })

  it('adds nothing above the target', () => {
    const full = preyTopUp({ ...tank, residualPerMl: 20 })
    expect(full.animalsToAdd).toBe(0)
    expect(full.densityAfterPerMl).toBe(20)
  })

  it.each([
    ['targetPerMl', { targetPerMl: -1 }],
    ['residualPerMl', { residualPerMl: Number.NaN }],
    ['volumeL', { volumeL: 0 }],
    ['hoursUntilNextFeed', { hoursUntilNextFeed: 100 }],
    ['waterExchangedFraction', { waterExchangedFraction: 1.1 }],
    ['densityOfCulturePerMl', { densityOfCulturePerMl: 0 }],
    ['sievingLoss', { sievingLoss: 1 }],
  ])('refuses a bad %s', (argument, change) => {
    expect(() => preyTopUp({ ...tank, ...change })).toThrow(argument)
  })
})

describe('learnGrazing', () => {
  const meal = { beforePerMl: 8, afterPerMl: 5, hours: 4, larvae: 300, volumeL: 20 }

  it('gives the published upper bound, flagged, when there is nothing to learn from', () => {
    const bound = learnGrazing({ observations: [] })
    expect(bound.basis).toBe('upper-bound')
    expect(bound.eatenPerLarvaPerHour * 24).toBeCloseTo(1900, 9)
    expect(bound.lowerPerLarvaPerHour).toBe(0)
  })

  it('divides what went missing among larvae and hours', () => {
    // 3 per mL of 20 L in 4 h by 300.
    expect(learnGrazing({ observations: [meal, meal] }).eatenPerLarvaPerHour).toBeCloseTo(50, 9)
  })

  it('takes what was flushed out off what was eaten', () => {
    const flushed = learnGrazing({ observations: [{ ...meal, dilutionPerDay: 1 }] })
    expect(flushed.eatenPerLarvaPerHour).toBeCloseTo((3 - 6.5 / 6) * (20_000 / 1200), 9)
  })

  it('is no surer than its counts, even where meals agree', () => {
    const counted = { ...meal, animalsCountedBefore: 80, animalsCountedAfter: 50 }
    const learned = learnGrazing({ observations: [counted, counted, counted] })
    const sd = (20_000 / 1200) * Math.sqrt(64 / 80 + 25 / 50)
    expect(learned.upperPerLarvaPerHour - learned.eatenPerLarvaPerHour).toBeCloseTo((1.96 * sd) / Math.sqrt(3), 1)
  })

  it('is as unsure as two meals that differ are', () => {
    // 4 and 6 per mL of 20 L in 4 h by 500 are 40 and 60: 50 give or take 12.706 (Student, one degree) times 10.
    const meals = [4, 6].map((eaten) => ({ ...meal, afterPerMl: 8 - eaten, larvae: 500 }))
    const { eatenPerLarvaPerHour, lowerPerLarvaPerHour, upperPerLarvaPerHour } = learnGrazing({ observations: meals })
    expect(eatenPerLarvaPerHour).toBeCloseTo(50, 9)
    expect(lowerPerLarvaPerHour).toBe(0)
    expect(upperPerLarvaPerHour).toBeCloseTo(177.06, 2)
  })

  it('leaves open twice as much or nothing of one meal alone, unless its counts say more', () => {
    const one = learnGrazing({ observations: [meal] })
    expect([one.lowerPerLarvaPerHour, one.upperPerLarvaPerHour]).toEqual([0, expect.closeTo(100, 9)])
    // None found of 8 per mL: the one that would have changed it is an eightieth of them.
    const emptied = { ...meal, afterPerMl: 0, animalsCountedBefore: 80, animalsCountedAfter: 0 }
    const sd = (20_000 / 1200) * Math.sqrt(64 / 80 + (8 / 80) ** 2)
    const { eatenPerLarvaPerHour, upperPerLarvaPerHour } = learnGrazing({ observations: [emptied] })
    expect(upperPerLarvaPerHour - eatenPerLarvaPerHour).toBeCloseTo(1.96 * sd, 2)
  })

  it('narrows as meals are added', () => {
    const meals = [5, 5.2, 4.8, 5.1, 4.9, 5, 5.3, 4.7].map((afterPerMl) => ({ ...meal, afterPerMl }))
    const width = (n: number) => {
      const { upperPerLarvaPerHour, lowerPerLarvaPerHour } = learnGrazing({ observations: meals.slice(0, n) })
      return upperPerLarvaPerHour - lowerPerLarvaPerHour
    }
    expect(width(8)).toBeLessThan(width(3))
  })

  it('never says that larvae eat less than nothing', () => {
    const grown = learnGrazing({ observations: [{ ...meal, afterPerMl: 9 }] })
    expect(grown.eatenPerLarvaPerHour).toBe(0)
    expect(grown.upperPerLarvaPerHour).toBeGreaterThanOrEqual(0)
  })

  it.each([
    ['hours is 0; allowed: a finite number above 0 hours', { hours: 0 }],
    ['beforePerMl is 0; allowed: a finite number above 0 per mL', { beforePerMl: 0 }],
    ['afterPerMl is -1; allowed: a finite number from 0 per mL', { afterPerMl: -1 }],
    ['larvae is 0; allowed: a finite number above 0 larvae', { larvae: 0 }],
    ['volumeL is 0; allowed: a finite number above 0 L', { volumeL: 0 }],
    ['dilutionPerDay is -1; allowed: a finite number from 0 tank volumes a day', { dilutionPerDay: -1 }],
    ['animalsCountedBefore is 0', { animalsCountedBefore: 0, animalsCountedAfter: 0 }],
    ['animalsCountedAfter is -1', { animalsCountedBefore: 1, animalsCountedAfter: -1 }],
  ])('names the observation whose %s', (sentence, change) => {
    expect(() => learnGrazing({ observations: [meal, { ...meal, ...change }] })).toThrow(`observations[1].${sentence}`)
  })
})

describe('what a top-up is told', () => {
  it('fills above the target only for what will be eaten and flushed out meanwhile', () => {
    // 12 per mL too many in 40 L are 480,000; 400 larvae eat 600,000 in six hours at 250.
    const eaten = preyTopUp({ ...tank, residualPerMl: 20, larvae: 400, eatenPerLarvaPerHour: 250 })
    expect(eaten).toMatchObject({ animalsForTarget: 0, expectedGrazing: 600_000, animalsToAdd: 120_000 })
    expect(eaten.densityAfterPerMl).toBe(23)
    expect(preyTopUp(tank)).toMatchObject({ animalsForTarget: 200_000, expectedGrazing: 0, expectedFlushing: 0 })
    expect(preyTopUp({ ...tank, eatenPerLarvaPerHour: 0 }).grazing).toBe('learned')
    expect(preyTopUp({ ...tank, eatenPerLarvaPerHour: 9 }).expectedGrazing).toBe(0)
  })

  it('has no more left after a change of all the water than it adds', () => {
    expect(preyTopUp({ ...tank, waterExchangedFraction: 1 })).toMatchObject({
      ...{ animalsToAdd: 320_000, densityAfterPerMl: 8 },
    })
  })

  it('asks for as much culture as the room’s sieve makes of it', () => {
    const { cultureMl } = preyTopUp({ ...tank, densityOfCulturePerMl: 500, sievingLoss: 0.5 })
    expect(cultureMl).toBeCloseTo(800, 9)
  })

  it.each([
    ['targetPerMl is -1; allowed: a finite number from 0 per mL', { targetPerMl: -1 }],
    ['residualPerMl is -1; allowed: a finite number from 0 per mL', { residualPerMl: -1 }],
    ['volumeL is 0; allowed: a finite number above 0 L', { volumeL: 0 }],
    ['larvae is -1; allowed: a finite number from 0 larvae', { larvae: -1 }],
    ['eatenPerLarvaPerHour is -1; allowed: a finite number from 0', { eatenPerLarvaPerHour: -1 }],
    ['hoursUntilNextFeed is 48.1; allowed: a number from 0 to 48 hours', { hoursUntilNextFeed: 48.1 }],
    ['hoursUntilNextFeed is -1', { hoursUntilNextFeed: -1 }],
    ['waterExchangedFraction is 1.1; allowed: a number from 0 to 1', { waterExchangedFraction: 1.1 }],
    ['waterExchangedFraction is -0.1', { waterExchangedFraction: -0.1 }],
    ['dilutionPerDay is -1; allowed: a finite number from 0 tank volumes a day', { dilutionPerDay: -1 }],
    ['densityOfCulturePerMl is 0; allowed: a finite number above 0 per mL', { densityOfCulturePerMl: 0 }],
  ])('is refused where %s', (sentence, change) => {
    const least = { targetPerMl: 0, residualPerMl: 0, volumeL: 1, hoursUntilNextFeed: 0 }
    expect(preyTopUp(least).animalsToAdd).toBe(0)
    expect(() => preyTopUp({ ...least, hoursUntilNextFeed: 48 })).not.toThrow()
    expect(() => preyTopUp({ ...tank, ...change })).toThrow(sentence)
  })
})

describe('what learned grazing says of itself', () => {
  const meal = { beforePerMl: 8, afterPerMl: 5, hours: 4, larvae: 300, volumeL: 20 }

  it('is where it comes from and of how many meals', () => {
    expect(learnGrazing({ observations: [] })).toMatchObject({
      observations: 0,
      source: expect.stringContaining('SRAC Publication 701'),
    })
    expect(learnGrazing({ observations: [meal, meal] })).toMatchObject({
      observations: 2,
      source: expect.stringContaining("this room's counts"),
    })
  })

  it('is an interval on both sides, at the level that is asked for', () => {
    // 100,000 animals behind each count: the middle 95 % and 80 % of a normal are 1.960 and 1.282 deviations.
    const counted = { ...meal, animalsCountedBefore: 1e5, animalsCountedAfter: 1e5 }
    const sd = (20_000 / 1200) * Math.sqrt((64 + 25) / 1e5)
    for (const [level, deviates] of [
      [0.95, 1.95996],
      [0.8, 1.28155],
    ] as const) {
      const { lowerPerLarvaPerHour, upperPerLarvaPerHour } = learnGrazing({ observations: [counted], level })
      expect(lowerPerLarvaPerHour).toBeCloseTo(50 - deviates * sd, 3)
      expect(upperPerLarvaPerHour).toBeCloseTo(50 + deviates * sd, 3)
    }
    const four = learnGrazing({ observations: [counted, counted, meal, meal] })
    // Two meals' counting error over four meals, and no spread among them.
    expect(four.upperPerLarvaPerHour).toBeCloseTo(50 + (1.95996 * sd * Math.SQRT2) / 4, 3)
  })

  it('is as unsure of the one animal that was found at the end as of any other', () => {
    const last = { ...meal, afterPerMl: 0.1, animalsCountedBefore: 40, animalsCountedAfter: 1 }
    const { eatenPerLarvaPerHour, upperPerLarvaPerHour } = learnGrazing({ observations: [last] })
    const sd = (20_000 / 1200) * Math.sqrt(8 ** 2 / 40 + 0.1 ** 2)
    expect(upperPerLarvaPerHour - eatenPerLarvaPerHour).toBeCloseTo(1.95996 * sd, 3)
  })

  it('leaves one that cannot have been eaten open upwards as far as it was off', () => {
    const grown = learnGrazing({ observations: [{ ...meal, afterPerMl: 11 }] })
    expect(grown).toMatchObject({ eatenPerLarvaPerHour: 0, lowerPerLarvaPerHour: 0, upperPerLarvaPerHour: 0 })
  })

  it('says nothing of counting error where only one end was counted', () => {
    const half = learnGrazing({ observations: [{ ...meal, animalsCountedBefore: 10 }] })
    expect(half).toEqual(learnGrazing({ observations: [meal] }))
    expect(learnGrazing({ observations: [{ ...meal, animalsCountedAfter: 10 }] })).toEqual(half)
  })

  it.each([0.009, 1])('is not at a level of %d', (level) => {
    expect(() => learnGrazing({ observations: [], level })).toThrow(
      `level is ${level}; allowed: a number from 0.01 to 0.999`,
    )
    for (const end of [0.01, 0.999]) expect(() => learnGrazing({ observations: [meal], level: end })).not.toThrow()
  })

  it('takes meals of which nothing is left, over hours of any flushing', () => {
    const { eatenPerLarvaPerHour } = learnGrazing({ observations: [{ ...meal, afterPerMl: 0, dilutionPerDay: 0 }] })
    expect(eatenPerLarvaPerHour).toBeCloseTo((8 * 20_000) / 1200, 9)
    expect(() =>
      learnGrazing({ observations: [{ ...meal, animalsCountedBefore: 0, animalsCountedAfter: 1 }] }),
    ).toThrow('observations[0].animalsCountedBefore is 0; allowed: a finite number above 0 animals')
    expect(() =>
      learnGrazing({ observations: [{ ...meal, animalsCountedBefore: 1, animalsCountedAfter: -1 }] }),
    ).toThrow('observations[0].animalsCountedAfter is -1; allowed: a finite number from 0 animals')
  })
})
