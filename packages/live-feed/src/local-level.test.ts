import { describe, expect, it } from 'vitest'
import { fitLocalLevel, localLevelFilter } from './local-level.ts'

const start = { observationVariance: 1, levelVariance: 0, initialMean: 0, initialVariance: 1 }

describe('the local-level filter', () => {
  it('is the mean of normal values and its prior where the level stands still', () => {
    // Prior 0 and values 2 and 4, all of variance 1: their means are 1 and 2, of variances 1/2 and 1/3 (conjugate normal:
    // Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., 2.5). Each value is normal around the mean before it.
    const found = localLevelFilter({ ...start, series: [2, 4] })
    expect(found.filteredMeans).toEqual([1, expect.closeTo(2, 12)])
    expect(found.predictedMeans).toEqual([0, 1, expect.closeTo(2, 12)])
    expect(found.filteredVariances).toEqual([0.5, expect.closeTo(1 / 3, 12)])
    const logNormal = (distance: number, variance: number) =>
      -0.5 * (Math.log(2 * Math.PI * variance) + distance ** 2 / variance)
    expect(found.logLikelihood).toBeCloseTo(logNormal(2, 2) + logNormal(3, 1.5), 12)
  })

  it('loses sureness with every step, seen or not', () => {
    const { filteredVariances } = localLevelFilter({ ...start, levelVariance: 0.5, series: [2, null, null] })
    expect(filteredVariances).toEqual([0.5, 1, 1.5])
  })

  it('stays with a level that is known for certain', () => {
    const { filteredMeans, logLikelihood } = localLevelFilter({ ...start, observationVariance: 0, series: [2, 2] })
    expect(filteredMeans).toEqual([2, 2])
    expect(logLikelihood).toBeCloseTo(-0.5 * (Math.log(2 * Math.PI) + 4), 12)
  })

  it.each([
    ['observationVariance is -1; allowed: a finite number from 0', { observationVariance: -1 }],
    ['initialVariance is -1; allowed: a finite number from 0', { initialVariance: -1 }],
    ['initialMean is NaN; allowed: a finite number', { initialMean: Number.NaN }],
    ['above 0 when initialVariance is 0', { observationVariance: 0, initialVariance: 0 }],
  ])('says %s', (sentence, change) => {
    expect(() => localLevelFilter({ ...start, series: [1], ...change })).toThrow(sentence)
  })
})

it('variances are not sought in two values, or in values all alike', () => {
  expect(() => fitLocalLevel({ series: [1, 2] })).toThrow('series.length is 2')
  expect(() => fitLocalLevel({ series: [1, 1, 1] })).toThrow('variance of the steps of series is 0')
})
