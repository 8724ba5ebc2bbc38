import { describe, expect, it } from 'vitest'
import { posteriorAround } from './importance.ts'

// A few hundred weighted draws tell a mean to a tenth of its spread and a variance to a fifth: what a band is read for.
describe('the spread of what a history leaves open', () => {
  it('is that of a skewed density, which its curvature at the top misses', () => {
    // The logarithm of a gamma variable with shape 2 has mean digamma(2) and variance trigamma(2): 0.4228 and 0.6449
    // (Abramowitz & Stegun 1964, table 6.1). Its top lies at ln 2 = 0.693, with a curvature that says a variance of 0.5.
    const { mean, covariance } = posteriorAround({
      cost: ([log = Number.NaN]) => Math.exp(log) - 2 * log,
      point: [Math.LN2],
      covariance: [[0.5]],
    })
    expect(Math.abs((mean[0] ?? Number.NaN) - 0.4228)).toBeLessThan(0.05)
    expect(Math.abs((covariance[0]?.[0] ?? Number.NaN) - 0.6449)).toBeLessThan(0.1)
  })

  it('is that of a normal density of two figures that move together, drawn for as if they did not', () => {
    // Correlation 0.6, variances 1 and 4: the inverse of [[1, 1.2], [1.2, 4]] is [[4, -1.2], [-1.2, 1]] / 2.56.
    const centre = [3, -5] as const
    const cost = ([x = Number.NaN, y = Number.NaN]: readonly number[]) => {
      const [dx, dy] = [x - centre[0], y - centre[1]]
      return (4 * dx * dx - 2.4 * dx * dy + dy * dy) / (2 * 2.56)
    }
    const { mean, covariance } = posteriorAround({
      cost,
      point: centre,
      covariance: [
        [1.5, 0],
        [0, 3],
      ],
    })
    const found = [...mean, covariance[0]?.[0], covariance[0]?.[1], covariance[1]?.[0], covariance[1]?.[1]]
    const expected = [3, -5, 1, 1.2, 1.2, 4]
    const near = [0.1, 0.2, 0.2, 0.25, 0.25, 0.8]
    for (const [i, value] of expected.entries())
      expect(Math.abs((found[i] ?? Number.NaN) - value), `figure ${i}: ${found[i]}`).toBeLessThan(near[i] ?? 0)
  })

  it('passes over draws of which nothing can be said', () => {
    const { mean } = posteriorAround({
      cost: ([x = Number.NaN]) => (x < 0 ? Number.POSITIVE_INFINITY : x),
      point: [1],
      covariance: [[1]],
    })
    // An exponential variable: its mean is 1.
    expect(Math.abs((mean[0] ?? Number.NaN) - 1)).toBeLessThan(0.15)
  })
})
