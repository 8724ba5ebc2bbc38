import { ArgumentError } from '@fryward/survival'
import { describe, expect, it } from 'vitest'
import { animalsToCount, densityFromCounts } from './count.ts'
import { seededRandom } from './random.ts'

describe('densityFromCounts', () => {
  it('divides the total by volume and replicates and multiplies by the dilution', () => {
    const density = densityFromCounts({ animals: [40, 35, 45], volumeMl: 0.5, dilution: 4 })
    expect(density.densityPerMl).toBeCloseTo((120 / 1.5) * 4, 12)
    expect(density.animalsCounted).toBe(120)
    expect(density.replicates).toBe(3)
    expect(density.coefficientOfVariation).toBeCloseTo(1 / Math.sqrt(120), 12)
  })

  it('keeps the exact interval while replicates differ no more than by chance', () => {
    const even = densityFromCounts({ animals: [40, 35, 45], volumeMl: 1 })
    const whole = densityFromCounts({ animals: [120], volumeMl: 3 })
    expect(even.dispersion.overdispersed).toBe(false)
    expect(even.lowerPerMl).toBeCloseTo(whole.lowerPerMl, 12)
    expect(even.upperPerMl).toBeCloseTo(whole.upperPerMl, 12)
  })

  it('widens the interval, and says so, when replicates are too uneven', () => {
    const uneven = densityFromCounts({ animals: [10, 80, 30], volumeMl: 1 })
    const whole = densityFromCounts({ animals: [120], volumeMl: 3 })
    // Variance 1300 over mean 40.
    expect(uneven.dispersion.index).toBeCloseTo(32.5, 12)
    expect(uneven.dispersion.pValue).toBeLessThan(1e-6)
    expect(uneven.dispersion.overdispersed).toBe(true)
    expect(uneven.lowerPerMl).toBeLessThan(whole.lowerPerMl)
    expect(uneven.upperPerMl).toBeGreaterThan(whole.upperPerMl)
    expect(uneven.densityPerMl).toBe(whole.densityPerMl)
  })

  it('answers for a count of nothing: density 0 and an upper end', () => {
    const none = densityFromCounts({ animals: [0, 0], volumeMl: 1 })
    expect(none.densityPerMl).toBe(0)
    expect(none.lowerPerMl).toBe(0)
    // Garwood's upper end for 0 at 95 % is 3.689.
    expect(none.upperPerMl).toBeCloseTo(3.6889 / 2, 4)
    expect(none.coefficientOfVariation).toBeNull()
  })

  it('covers the true density of clumped animals far oftener than the plain interval', () => {
    const random = seededRandom(11)
    const poisson = (mean: number) => {
      let count = 0
      for (let product = random.uniform(); product > Math.exp(-mean); product *= random.uniform()) count += 1
      return count
    }
    let widened = 0
    let plain = 0
    const rounds = 400
    for (let round = 0; round < rounds; round += 1) {
      const animals = Array.from({ length: 6 }, () => poisson(40 * Math.exp(0.5 * random.normal() - 0.125)))
      const total = animals.reduce((sum, count) => sum + count, 0)
      const density = densityFromCounts({ animals, volumeMl: 1 })
      const exact = densityFromCounts({ animals: [total], volumeMl: 6 })
      if (density.lowerPerMl <= 40 && density.upperPerMl >= 40) widened += 1
      if (exact.lowerPerMl <= 40 && exact.upperPerMl >= 40) plain += 1
    }
    expect(plain / rounds).toBeLessThan(0.6)
    expect(widened / rounds).toBeGreaterThan(0.9)
  })

  it.each([
    [{ animals: [], volumeMl: 1 }, 'animals.length'],
    [{ animals: [1.5], volumeMl: 1 }, 'animals[0]'],
    [{ animals: [3, -1], volumeMl: 1 }, 'animals[1]'],
    [{ animals: [Number.NaN], volumeMl: 1 }, 'animals[0]'],
    [{ animals: [3], volumeMl: 0 }, 'volumeMl'],
    [{ animals: [3], volumeMl: 1, dilution: 0.5 }, 'dilution'],
    [{ animals: [3], volumeMl: 1, level: 1 }, 'level'],
  ])('refuses %j and names %s', (input, argument) => {
    expect(() => densityFromCounts(input)).toThrow(ArgumentError)
    expect(() => densityFromCounts(input)).toThrow(argument)
  })
})

describe('the index of dispersion', () => {
  const of = (animals: number[]) => densityFromCounts({ animals, volumeMl: 1 }).dispersion

  it('is the variance over the mean, with the tail of chi-square beyond it', () => {
    // 10 with two degrees of freedom: exp(-5). 3.33 and 4.5 with one: what a normal has beyond 1.826 and 2.121.
    // Abramowitz & Stegun 1964, 26.4.4 and table 26.1.
    expect(of([10, 20, 30])).toMatchObject({ index: 5, overdispersed: true })
    expect(of([10, 20, 30]).pValue).toBeCloseTo(Math.exp(-5), 9)
    expect(of([10, 20]).pValue).toBeCloseTo(0.0679, 4)
    expect(of([10, 20]).overdispersed).toBe(false)
    expect(of([10, 22]).pValue).toBeCloseTo(0.0339, 4)
    expect(of([10, 22]).overdispersed).toBe(true)
  })

  it('says nothing of one sample, of none seen, and of samples more alike than chance makes them', () => {
    for (const animals of [[40], [0, 0, 0]]) expect(of(animals)).toEqual({ index: 1, pValue: 1, overdispersed: false })
    expect(of([20, 20, 20])).toMatchObject({ index: 0, overdispersed: false })
    expect(of([1, 0]).index).toBeCloseTo(1, 12)
  })
})

describe('animalsToCount', () => {
  it.each([
    [0.2, 25],
    [0.1, 100],
    [0.05, 400],
  ])('a coefficient of variation of %d takes %d animals', (coefficientOfVariation, animals) => {
    expect(animalsToCount({ coefficientOfVariation })).toBe(animals)
  })
})

describe('how surely it is known', () => {
  // Student's deviates at 95 %: 4.303 with two degrees of freedom, 1.960 with very many (Fisher & Yates 1938, table III).
  const times = (4.3027 / 1.95996) * Math.sqrt(5)

  it('three uneven samples widen the exact interval by the root of the index and Student’s deviate', () => {
    const uneven = densityFromCounts({ animals: [10, 20, 30], volumeMl: 1 })
    // Garwood's interval of 60 is 45.79 to 77.23 (1936, Biometrika 28:437-442).
    expect(Math.log(uneven.lowerPerMl / 20) / times).toBeCloseTo(Math.log(45.786 / 60), 3)
    expect(Math.log(uneven.upperPerMl / 20) / times).toBeCloseTo(Math.log(77.232 / 60), 3)
    expect(uneven.coefficientOfVariation).toBeCloseTo(Math.sqrt(5 / 60), 12)
  })

  it('two samples are given three’s deviate: one degree of freedom would say nothing at all', () => {
    const { upperPerMl, dispersion, animalsCounted } = densityFromCounts({ animals: [20, 40], volumeMl: 1 })
    expect(Math.log(upperPerMl / 30) / Math.log(77.232 / 60)).toBeCloseTo(
      (4.3027 / 1.95996) * Math.sqrt(dispersion.index),
      2,
    )
    expect([animalsCounted, dispersion.overdispersed]).toEqual([60, true])
  })

  it('four samples have three degrees of freedom: 3.182', () => {
    const { upperPerMl, dispersion } = densityFromCounts({ animals: [5, 10, 15, 30], volumeMl: 1 })
    expect(Math.log(upperPerMl / 15) / Math.log(77.232 / 60)).toBeCloseTo(
      (3.1824 / 1.95996) * Math.sqrt(dispersion.index),
      2,
    )
  })

  it('one in twenty times chance alone is called unevenness: 11 and 22 are not yet so', () => {
    // (22 - 11)^2 / 33 is 3.67, beyond which chi-square with one degree of freedom has 5.5 % (Abramowitz & Stegun, 26.2.1).
    const { pValue, overdispersed } = densityFromCounts({ animals: [11, 22], volumeMl: 1 }).dispersion
    expect([pValue, overdispersed]).toEqual([expect.closeTo(0.0555, 4), false])
  })

  it.each([
    ['volumeMl is 0; allowed: a finite number above 0 mL', { volumeMl: 0 }],
    ['dilution is 0.9; allowed: a finite number from 1 (undiluted)', { dilution: 0.9 }],
    ['dilution is Infinity', { dilution: Number.POSITIVE_INFINITY }],
  ])('it is refused where %s', (sentence, change) => {
    expect(() => densityFromCounts({ animals: [3], volumeMl: 1, ...change })).toThrow(sentence)
    expect(densityFromCounts({ animals: [3], volumeMl: 1, dilution: 1 }).densityPerMl).toBe(3)
  })

  it.each([0, -0.1, 1.1, Number.NaN])('nobody can count to a coefficient of variation of %d', (value) => {
    expect(() => animalsToCount({ coefficientOfVariation: value })).toThrow(
      `coefficientOfVariation is ${value}; allowed: a share above 0 up to 1`,
    )
    expect(animalsToCount({ coefficientOfVariation: 1 })).toBe(1)
  })
})
