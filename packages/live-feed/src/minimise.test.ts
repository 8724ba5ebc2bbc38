import { describe, expect, it } from 'vitest'
import { covarianceAt, minimise } from './minimise.ts'

/** Minus the log density of a normal with variances 1 and 4 and covariance 1.2, at (3, -5): inverse [[4, -1.2], [-1.2, 1]] / 2.56. */
const normal = ([x, y]: readonly number[]) =>
  (4 * (x! - 3) ** 2 - 2.4 * (x! - 3) * (y! + 5) + (y! + 5) ** 2) / (2 * 2.56)

describe('the least of a function', () => {
  it('is found in a bent valley', () => {
    // Rosenbrock 1960, Computer J. 3:175-184: from (-1.2, 1) to (1, 1), where it is 0.
    const valley = ([x, y]: readonly number[]) => 100 * (y! - x! ** 2) ** 2 + (1 - x!) ** 2
    const { point, value, isConverged } = minimise(valley, [-1.2, 1])
    expect(isConverged).toBe(true)
    expect(value).toBeLessThan(1e-8)
    for (const each of point) expect(each).toBeCloseTo(1, 3)
  })

  it('is found in few steps where it is a bowl, and not claimed before', () => {
    const { point, isConverged } = minimise(normal, [0, 0], 12)
    expect(isConverged).toBe(true)
    expect([point[0], point[1]]).toEqual([expect.closeTo(3, 4), expect.closeTo(-5, 4)])
    expect(minimise(normal, [0, 0], 1).isConverged).toBe(false)
  })

  it('is not claimed where a cliff misleads', () => {
    const cliff = ([x]: readonly number[]) => (x! < 0 ? 10 : x!)
    expect(minimise(cliff, [0])).toEqual({ point: [0], value: 0, isConverged: false })
  })

  it('passes over what cannot be computed', () => {
    const log = ([x]: readonly number[]) => x! - Math.log(x!)
    const { point, isConverged } = minimise(log, [0.05])
    expect([point[0], isConverged]).toEqual([expect.closeTo(1, 4), true])
  })
})

describe('the covariance at the least', () => {
  it('is that of a normal density', () => {
    const [[xx, xy], [yx, yy]] = covarianceAt(normal, [3, -5], 100) as [[number, number], [number, number]]
    expect([xx, xy, yx, yy]).toEqual([1, 1.2, 1.2, 4].map((each) => expect.closeTo(each, 6)))
  })

  it('is no larger than asked where the data say nothing', () => {
    const covariance = covarianceAt(([x]) => x! ** 2 / 2, [0, 0], 9)
    expect(covariance[0]![0]).toBeCloseTo(1, 6)
    expect(covariance[1]![1]).toBeCloseTo(9, 6)
    expect(covarianceAt(() => 0, [0])[0]![0]).toBeCloseTo(4, 6)
  })
})
