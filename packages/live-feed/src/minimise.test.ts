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

describe('a step', () => {
  /** The points that were looked at, but for those next to another that only say how steep it is. */
  function looked(objective: (x: number) => number, start: number, steps?: number) {
    const points: number[] = []
    const found = minimise(
      ([x]) => {
        points.push(x!)
        return objective(x!)
      },
      [start],
      steps,
    )
    // The start and two to tell how steep it is there come first.
    return { points: points.slice(3), found }
  }

  it('goes no farther than 2 however steep it is: a rate is multiplied by no more than seven and a half', () => {
    expect(looked((x) => 1e6 * (x - 10) ** 2, 0, 1).points[0]).toBeCloseTo(2, 9)
    expect(looked((x) => 1e6 * (x - 10) ** 2, 20, 1).points[0]).toBeCloseTo(18, 9)
    // A steepness of 1 goes by 1.
    expect(looked((x) => x, 0, 1).points[0]).toBeCloseTo(-1, 6)
  })

  it('is halved until it falls by a ten-thousandth of what the slope says (Armijo 1966, Pacific J. Math. 16:1-3)', () => {
    // Downhill for an eighth, a wall after it.
    const { points, found } = looked((x) => (x < -0.2 ? 5 : x), 0, 1)
    expect(points.slice(0, 4)).toEqual([-1, -0.5, -0.25, -0.125].map((each) => expect.closeTo(each, 6)))
    expect(found).toMatchObject({ value: expect.closeTo(-0.125, 6), isConverged: false })
    // Beyond one it falls by a thousandth, and by a hundred-thousandth, of what the slope at 0 promises.
    const bent = (share: number) => (x: number) => (x < -0.01 ? share * x : x)
    expect(looked(bent(1e-3), 0, 1).found.point[0]).toBeCloseTo(-1, 6)
    expect(looked(bent(1e-5), 0, 1).found.point[0]).toBeGreaterThan(-0.01)
  })

  it('that cannot be made is the end: found where it is as good as level, not where it is steep', () => {
    // At 0 it rises on both sides, by c to the left and by 3 c to the right: the quotient says c, and a step left helps nothing.
    const kink = (c: number) => minimise(([x]) => Math.max(3 * c * x!, -c * x!), [0])
    expect(kink(0.0099)).toEqual({ point: [0], value: 0, isConverged: true })
    expect(kink(0.0105)).toEqual({ point: [0], value: 0, isConverged: false })
  })

  it('follows two hundred times at most', () => {
    let turns = 0
    const endless = minimise(
      ([x]) => {
        turns += 1
        return -x!
      },
      [0],
    )
    expect(endless.isConverged).toBe(false)
    expect(endless.point[0]).toBeCloseTo(200, 3)
    expect(turns).toBe(3 + 200 * 3)
  })
})
