import { describe, expect, test } from 'vitest'
import { ArgumentError } from './argument-error.ts'
import { kaplanMeier, survivalAt } from './kaplan-meier.ts'
import { logRank } from './log-rank.ts'

describe('kaplanMeier', () => {
  test('has no step and no median while nobody dies', () => {
    expect(kaplanMeier([{ time: 5, event: false, weight: 40 }])).toEqual({
      steps: [],
      median: null,
      animals: 40,
      events: 0,
    })
  })

  test('shows an interval, never NaN, when the last animal dies', () => {
    const last = kaplanMeier([
      { time: 1, event: true },
      { time: 2, event: true },
    ]).steps.at(-1)
    expect(last).toMatchObject({ survival: 0, lower: 0, standardError: 0 })
    expect(last?.upper).toBeGreaterThan(0)
  })

  test('counts an animal that leaves on the day of a death as at risk on that day', () => {
    const curve = kaplanMeier([
      { time: 4, event: true },
      { time: 4, event: false },
    ])
    expect(curve.steps).toMatchObject([{ time: 4, atRisk: 2, events: 1, survival: 0.5 }])
    expect(curve.median).toBe(4)
  })

  test('takes an animal that came later as at risk only since then', () => {
    const curve = kaplanMeier([
      { time: 2, event: true },
      { time: 9, event: false },
      { time: 6, event: true, enteredAt: 3 },
    ])
    expect(curve.steps.map(({ time, atRisk }) => [time, atRisk])).toEqual([
      [2, 2],
      [6, 2],
    ])
  })

  test('answers for any time with the last step before it', () => {
    const curve = kaplanMeier([
      { time: 2, event: true },
      { time: 5, event: false },
    ])
    expect(survivalAt(curve, 1.9)).toBeNull()
    expect(survivalAt(curve, 2)?.survival).toBe(0.5)
    expect(survivalAt(curve, 99)?.survival).toBe(0.5)
  })

  test.each([
    [[], /observations is empty; allowed: at least one observation/],
    [[{ time: -1, event: true }], /observations\[0\]\.time is -1/],
    [[{ time: Number.NaN, event: true }], /observations\[0\]\.time is NaN/],
    [[{ time: 1, event: 'yes' as unknown as boolean }], /observations\[0\]\.event is yes; allowed: true or false/],
    [[{ time: 1, event: true, enteredAt: -1 }], /observations\[0\]\.enteredAt is -1; allowed: a finite number from 0/],
    [[{ time: 1, event: true, weight: -2 }], /observations\[0\]\.weight is -2/],
    [[{ time: 1, event: true, enteredAt: 1 }], /observations\[0\]\.enteredAt is 1; allowed: under its time, 1/],
  ])('refuses %o', (observations, message) => {
    expect(() => kaplanMeier(observations)).toThrow(ArgumentError)
    expect(() => kaplanMeier(observations)).toThrow(message)
  })
})

describe('logRank', () => {
  test('has nothing to compare when nobody died, and says so', () => {
    const alive = [{ time: 3, event: false }]
    expect(logRank([alive, alive])).toMatchObject({ chiSquare: 0, degreesOfFreedom: 0, pValue: 1, observed: [0, 0] })
  })

  test('does not count a group that left before the first death as one to compare', () => {
    const early = [{ time: 1, event: false }]
    const a = [2, 3, 4].map((time) => ({ time, event: true }))
    const b = [5, 6, 7].map((time) => ({ time, event: true }))
    const both = logRank([a, b])
    const three = logRank([a, early, b])
    expect(three.degreesOfFreedom).toBe(1)
    expect(three.chiSquare).toBeCloseTo(both.chiSquare, 10)
  })

  test.each([
    [[], /groups is 0 groups; allowed: at least two groups/],
    [[[{ time: 1, event: true }]], /groups is 1 groups/],
    [[[{ time: 1, event: true }], []], /groups\[1\] is empty/],
    [[[{ time: 1, event: true }], [{ time: -3, event: true }]], /groups\[1\]\[0\]\.time is -3/],
  ])('refuses %o', (groups, message) => {
    expect(() => logRank(groups)).toThrow(message)
  })
})
