import fc from 'fast-check'
import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, test } from 'vitest'
import { clopperPearsonInterval, poissonInterval, proportionDifferenceInterval, wilsonInterval } from './intervals.ts'
import { kaplanMeier } from './kaplan-meier.ts'
import { logRank } from './log-rank.ts'
import type { Observation } from './observation.ts'

const runs = { numRuns: 200 }
const proportion = fc
  .integer({ min: 1, max: 2000 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }))

describe('intervals', () => {
  test('of a count hold the count, and grow with count and level', () => {
    fc.assert(
      fc.property(fc.nat(100_000), (count) => {
        const { lower, upper } = poissonInterval({ count })
        expect(lower).toBeLessThanOrEqual(count)
        expect(upper).toBeGreaterThan(count)
        expect(poissonInterval({ count: count + 1 }).lower).toBeGreaterThan(lower)
        expect(poissonInterval({ count, level: 0.99 }).upper).toBeGreaterThan(upper)
      }),
      runs,
    )
  })

  test('of a share hold it and lie within 0 and 1; the other outcome mirrors it', () => {
    fc.assert(
      fc.property(proportion, ({ successes, trials }) => {
        for (const interval of [wilsonInterval, clopperPearsonInterval]) {
          const { lower, upper } = interval({ successes, trials })
          expect(lower).toBeGreaterThanOrEqual(0)
          expect(upper).toBeLessThanOrEqual(1)
          expect(lower).toBeLessThanOrEqual(successes / trials)
          expect(upper).toBeGreaterThanOrEqual(successes / trials)
          const mirrored = interval({ successes: trials - successes, trials })
          expect(mirrored.lower).toBeCloseTo(1 - upper, 9)
          expect(mirrored.upper).toBeCloseTo(1 - lower, 9)
        }
      }),
      runs,
    )
  })

  test('of a difference turn round when the two sides change places', () => {
    fc.assert(
      fc.property(proportion, proportion, (a, b) => {
        const forth = proportionDifferenceInterval({ a, b })
        const back = proportionDifferenceInterval({ a: b, b: a })
        expect(back.lower).toBeCloseTo(-forth.upper, 10)
        expect(back.upper).toBeCloseTo(-forth.lower, 10)
        expect(forth.lower).toBeGreaterThanOrEqual(-1)
        expect(forth.upper).toBeLessThanOrEqual(1)
      }),
      runs,
    )
  })
})

const observation: fc.Arbitrary<Observation> = fc.record({
  time: fc.integer({ min: 1, max: 12 }),
  event: fc.boolean(),
  weight: fc.integer({ min: 1, max: 4 }),
})
const group = fc.array(observation, { minLength: 1, maxLength: 25 })

function onePerAnimal(observations: readonly Observation[]): Observation[] {
  return observations.flatMap(({ time, event, weight = 1 }) => Array.from({ length: weight }, () => ({ time, event })))
}

describe('kaplanMeier', () => {
  test('falls from at most 1 to at least 0 inside its interval, in any order of observations', () => {
    fc.assert(
      fc.property(group, (observations) => {
        const curve = kaplanMeier(observations)
        expect(kaplanMeier([...observations].reverse())).toEqual(curve)
        let before = 1
        for (const { survival, lower, upper, standardError } of curve.steps) {
          expect(survival).toBeLessThan(before)
          expect(survival).toBeGreaterThanOrEqual(lower)
          expect(survival).toBeLessThanOrEqual(upper)
          expect(Number.isFinite(standardError)).toBe(true)
          expect(lower).toBeGreaterThanOrEqual(0)
          expect(upper).toBeLessThanOrEqual(1)
          before = survival
        }
      }),
      runs,
    )
  })

  test('counts a weight as that many animals', () => {
    fc.assert(
      fc.property(group, (observations) => {
        expect(kaplanMeier(observations)).toEqual(kaplanMeier(onePerAnimal(observations)))
      }),
      runs,
    )
  })

  test('is the share still alive, with binomial error, when nobody leaves', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 40 }), (times) => {
        for (const step of kaplanMeier(times.map((time) => ({ time, event: true }))).steps) {
          const share = times.filter((time) => time > step.time).length / times.length
          expect(step.survival).toBeCloseTo(share, 12)
          expect(step.standardError).toBeCloseTo(Math.sqrt((share * (1 - share)) / times.length), 12)
        }
      }),
      runs,
    )
  })

  test('is not moved by animals that enter after the last death', () => {
    fc.assert(
      fc.property(group, fc.integer({ min: 1, max: 50 }), (observations, weight) => {
        const late = { time: 20, event: false, weight, enteredAt: 12 }
        expect(kaplanMeier([...observations, late]).steps).toEqual(kaplanMeier(observations).steps)
      }),
      runs,
    )
  })
})

describe('logRank', () => {
  test('is the quadratic form of any k - 1 groups with the inverse of their covariance', () => {
    const threeGroups = fc.tuple(group, group, group)
    fc.assert(
      fc.property(threeGroups, (groups) => {
        const result = logRank(groups)
        if (result.degreesOfFreedom < 2) return
        for (const dropped of [0, 1, 2]) {
          const kept = [0, 1, 2].filter((index) => index !== dropped)
          const difference = kept.map((i) => (result.observed[i] ?? 0) - (result.expected[i] ?? 0))
          const covariance = new Matrix(kept.map((i) => kept.map((j) => result.covariance[i]?.[j] ?? 0)))
          const row = Matrix.rowVector(difference)
          const form = row.mmul(inverse(covariance)).mmul(row.transpose()).get(0, 0)
          expect(Math.abs(form - result.chiSquare)).toBeLessThan(1e-6 * Math.max(1, form))
        }
      }),
      runs,
    )
  })

  test('expects as many deaths in all as were seen, in any order of groups and observations', () => {
    fc.assert(
      fc.property(fc.array(group, { minLength: 2, maxLength: 5 }), (groups) => {
        const result = logRank(groups)
        const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)
        expect(total(result.expected)).toBeCloseTo(total(result.observed), 9)
        const turned = logRank([...groups].reverse().map((observations) => [...observations].reverse()))
        expect(turned.chiSquare).toBeCloseTo(result.chiSquare, 8)
        expect(turned.degreesOfFreedom).toBe(result.degreesOfFreedom)
        expect(turned.observed).toEqual([...result.observed].reverse())
        expect(result.pValue).toBeGreaterThanOrEqual(0)
        expect(result.pValue).toBeLessThanOrEqual(1)
      }),
      runs,
    )
  })

  test('counts a weight as that many animals and finds no difference between twins', () => {
    fc.assert(
      fc.property(group, group, (a, b) => {
        expect(logRank([a, b]).chiSquare).toBeCloseTo(logRank([onePerAnimal(a), onePerAnimal(b)]).chiSquare, 9)
        expect(logRank([a, a]).chiSquare).toBeCloseTo(0, 9)
      }),
      runs,
    )
  })
})
