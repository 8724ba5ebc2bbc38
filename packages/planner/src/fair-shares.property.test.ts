import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fairShares } from './fair-shares.ts'
import { sumOf } from './follow.ts'

const plate = fc.record({ wanted: fc.integer({ min: 0, max: 100 }), has: fc.integer({ min: 0, max: 120 }) })
const plates = fc.array(plate, { minLength: 1, maxLength: 6 })

describe('what is shared fairly', () => {
  // Max-min fairness by filling up: Bertsekas & Gallager 1992, Data Networks, 2nd ed., 6.5.2.
  test('goes to whoever has least of what he wants, and nothing of it is lost or given beyond that', () => {
    fc.assert(
      fc.property(plates, fc.integer({ min: 0, max: 500 }), (each, amount) => {
        const shares = fairShares(each, amount)
        const missing = sumOf(each.map(({ wanted, has }) => Math.max(0, wanted - has)))
        expect(sumOf(shares)).toBeCloseTo(Math.min(amount, missing), 6)
        const fed = each.map(({ wanted, has }, index) => (wanted > 0 ? (has + shares[index]!) / wanted : 1))
        const given = fed.filter((_, index) => shares[index]! > 1e-9)
        // All that were given any stand alike, and nobody who was given none stands lower.
        for (const level of given) expect(level).toBeCloseTo(Math.min(1, ...fed), 6)
      }),
      { numRuns: 300 },
    )
  })

  test('fills the emptier plate first, by hand', () => {
    // Half and a fifth of 100 are there: 30 raise the second to the first, and of 20 more each gets 10.
    const two = [
      { wanted: 100, has: 50 },
      { wanted: 100, has: 20 },
    ]
    expect(fairShares(two, 30)).toEqual([0, expect.closeTo(30, 9)])
    expect(fairShares(two, 50)).toEqual([expect.closeTo(10, 9), expect.closeTo(40, 9)])
    expect(fairShares(two, 500)).toEqual([50, 80])
    expect(fairShares(two, 130.5)).toEqual([50, 80])
  })

  test('strains alike what it is asked of', () => {
    // Of 100, 40 and 60 that may go, 10, 20 and none are gone: at 0.3 of each that is 20, none and 18 more, at 0.65 55, 6 and 39.
    const stocks = [
      { wanted: 100, has: 10 },
      { wanted: 40, has: 20 },
      { wanted: 60, has: 0 },
    ]
    const near = (shares: number[]) => shares.map((each) => expect.closeTo(each, 9))
    expect(fairShares(stocks, 38)).toEqual(near([20, 0, 18]))
    expect(fairShares(stocks, 100)).toEqual(near([55, 6, 39]))
    expect(fairShares(stocks, 900)).toEqual([90, 20, 60])
    expect(fairShares([], 5)).toEqual([])
    // One that may give nothing today stands in nobody's way: of the other two the one that has given a tenth gives all.
    const idle = [
      { wanted: 100, has: 90 },
      { wanted: 0, has: 0 },
      { wanted: 100, has: 10 },
    ]
    expect(fairShares(idle, 20)).toEqual([0, 0, expect.closeTo(20, 9)])
    // Nothing is given by nothing, and whoever has more than he wants keeps it.
    expect(fairShares(stocks, 0)).toEqual([0, 0, 0])
    expect(
      fairShares(
        [
          { wanted: 10, has: 30 },
          { wanted: 10, has: 0 },
        ],
        4,
      ),
    ).toEqual([0, expect.closeTo(4, 9)])
  })
})
