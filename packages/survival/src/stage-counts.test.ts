import { describe, expect, test } from 'vitest'
import { wilsonInterval } from './intervals.ts'
import { stageCounts } from './stage-counts.ts'

describe('stageCounts', () => {
  test('gives each stage its share of the one before and of the first, with interval and number', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'hatched', animals: 400 },
        { stage: 'day 5', animals: 200 },
        { stage: 'settled', animals: 150 },
      ],
    })
    expect(stages[0]).toMatchObject({ stage: 'hatched', fromPrevious: null, fromFirst: null, lost: 0 })
    expect(stages[2]?.fromPrevious).toMatchObject({
      share: 0.75,
      of: 200,
      ...wilsonInterval({ successes: 150, trials: 200 }),
    })
    expect(stages[2]?.fromFirst).toMatchObject({ of: 400, method: 'Wilson' })
    expect(stages[2]?.fromFirst?.share).toBeCloseTo(0.375, 12)
    expect(stages[2]?.fromFirst?.lower).toBeCloseTo(wilsonInterval({ successes: 150, trials: 400 }).lower, 10)
  })

  test('uses the exact interval for small numbers', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'hatched', animals: 12 },
        { stage: 'settled', animals: 3 },
      ],
    })
    expect(stages[1]?.fromPrevious?.method).toBe('Clopper-Pearson')
    expect(stages[1]?.fromFirst?.method).toBe('Clopper-Pearson')
  })

  test('does not count animals that were moved, placed or culled as dead', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'settled', animals: 100, removed: 40 },
        { stage: 'placed size', animals: 60 },
      ],
    })
    expect(stages[1]).toMatchObject({ lost: 0, fromPrevious: { share: 1, of: 80 } })
  })

  test('widens the interval when the counts are estimates', () => {
    const count = (standardError: number) =>
      stageCounts({
        stages: [
          { stage: 'hatched', animals: 400, standardError },
          { stage: 'day 5', animals: 200, standardError },
        ],
      }).stages[1]?.fromPrevious
    const [exact, loose] = [count(0), count(30)]
    expect(loose?.lower).toBeLessThan(exact?.lower ?? 0)
    expect(loose?.upper).toBeGreaterThan(exact?.upper ?? 1)
    expect(loose?.share).toBe(0.5)
  })

  test('takes counting errors of ten in a hundred as such where the animals are many', () => {
    // Errors of a ratio add as squares on the log scale (delta method): half of it, times exp(-1.96 sqrt(0.02)) and exp(+...).
    const { stages } = stageCounts({
      stages: [
        { stage: 'hatched', animals: 4e6, standardError: 4e5 },
        { stage: 'day 2', animals: 3e6, standardError: 9e5 },
        { stage: 'day 5', animals: 2e6, standardError: 2e5 },
      ],
    })
    expect(stages[2]?.fromFirst?.lower).toBeCloseTo(0.379, 3)
    expect(stages[2]?.fromFirst?.upper).toBeCloseTo(0.66, 3)
  })

  test('leaves room above none where those that hatched were only estimated', () => {
    const died = (standardError: number) =>
      stageCounts({
        stages: [
          { stage: 'hatched', animals: 100, standardError },
          { stage: 'day 5', animals: 0 },
        ],
      }).stages[1]?.fromPrevious
    // Rule of three for Wilson's interval: z^2 / (n + z^2).
    expect(died(0)).toMatchObject({ share: 0, lower: 0, upper: expect.closeTo(3.8415 / 103.8415, 4) })
    expect(died(20)?.lower).toBe(0)
    expect(died(20)?.upper).toBeGreaterThan(1.3 * (died(0)?.upper ?? 1))
  })

  test('flags estimates that say more came through than were there, without a negative loss', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'eggs', animals: 300, standardError: 40 },
        { stage: 'hatched', animals: 320, standardError: 30 },
      ],
    })
    expect(stages[1]).toMatchObject({ lost: 0, isAboveBook: true, fromPrevious: { share: 1, upper: 1 } })
    expect(stages[1]?.fromPrevious?.lower).toBeLessThan(0.95)
  })

  test('has no share of nothing', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'hatched', animals: 20 },
        { stage: 'day 5', animals: 0 },
        { stage: 'settled', animals: 0 },
      ],
    })
    expect(stages[2]).toMatchObject({ fromPrevious: null, fromFirst: { share: 0, of: 20, lower: 0 } })
    const nothing = stageCounts({
      stages: [
        { stage: 'eggs', animals: 0 },
        { stage: 'hatched', animals: 0 },
      ],
    })
    expect(nothing.stages[1]).toMatchObject({ fromPrevious: null, fromFirst: null })
  })

  test('rests on those who began where nobody left on the way, exactly, and on fewer where some did', () => {
    // Greenwood's variance is then the binomial one of the first number (Kaplan & Meier 1958).
    for (let first = 3; first <= 30; first += 1) {
      const [second, third] = [Math.ceil(first * 0.7), Math.ceil(first * 0.3)]
      const stages = [first, second, third].map((animals, index) => ({ stage: `${index}`, animals }))
      const share = stageCounts({ stages }).stages[2]?.fromFirst
      expect(share).toMatchObject({ of: first, method: 'Clopper-Pearson' })
    }
    const stages = [
      { stage: 'hatched', animals: 30 },
      { stage: 'day 5', animals: 20, removed: 5 },
      { stage: 'settled', animals: 10 },
    ]
    const of = stageCounts({ stages }).stages[2]?.fromFirst?.of ?? 0
    // 10 of 30 and 5 of 17.5 died: (1 - S) / (S G), S = 2/3 * 5/7 = 10/21, G = 10 / (30 * 20) + 5 / (17.5 * 12.5).
    expect(of).toBeCloseTo(11 / 21 / ((10 / 21) * (1 / 60 + 5 / 218.75)), 9)
  })

  test('says nothing more of a group that has left alive, least of all that none survived', () => {
    const { stages } = stageCounts({
      stages: [
        { stage: 'hatched', animals: 100 },
        { stage: 'day 5', animals: 50, removed: 50 },
        { stage: 'settled', animals: 0 },
        { stage: 'placed', animals: 0 },
      ],
    })
    expect(stages[2]).toMatchObject({ lost: 0, fromFirst: { share: 0.5 } })
    expect(stages[3]).toMatchObject({ lost: 0, fromPrevious: null, fromFirst: null })
  })

  test.each([
    [[], /stages is empty/],
    [[{ stage: 'eggs', animals: -1 }], /stages\[0\]\.animals is -1/],
    [[{ stage: 'eggs', animals: Number.NaN }], /stages\[0\]\.animals is NaN/],
    [[{ stage: 'eggs', animals: 2.5 }], /stages\[0\]\.animals is 2.5/],
    [[{ stage: 'eggs', animals: -1, standardError: 2 }], /stages\[0\]\.animals is -1; allowed: a finite number from 0/],
    [[{ stage: 'eggs', animals: 5, removed: 0.5 }], /stages\[0\]\.removed is 0.5; allowed: a whole number from 0$/],
    [[{ stage: 'eggs', animals: 5, standardError: -1 }], /stages\[0\]\.standardError is -1/],
    [[{ stage: 'eggs', animals: 5, removed: 6 }], /stages\[0\]\.removed is 6; allowed: up to the 5 animals/],
    [
      [
        { stage: 'eggs', animals: 5, removed: 1 },
        { stage: 'hatched', animals: 5 },
      ],
      /stages\[1\]\.animals is 5; allowed: up to the 4 animals left of stage "eggs"/,
    ],
  ])('refuses %o', (stages, message) => {
    expect(() => stageCounts({ stages })).toThrow(message)
  })
})
