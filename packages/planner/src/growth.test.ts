import { describe, expect, test } from 'vitest'
import { chords, grown, grownByChords, leftOf, mayGive, mostOf } from './growth.ts'
import type { PlanCulture } from './question.ts'

const culture: PlanCulture = {
  ...{ id: 'A', food: 'rotifers', volumeL: 10, animals: 1000, growth: [], floorAnimals: 300, mostShare: 0.5 },
  ...{ goneShare: 0, thinnedToAnimals: 600, firstDay: 2, use: 'free' },
}

describe('a day of growth', () => {
  // Logistic growth in closed form: N(t) = K / (1 + (K / N - 1) exp(-r t)). Verhulst 1838, Corr. math. phys. 10:113-121.
  test('is logistic, with the capacity where crowding leaves it as it was', () => {
    const [r, capacity] = [0.5, 8000]
    const gain = Math.exp(r)
    const day = { gain, crowding: (gain - 1) / capacity }
    for (const n of [10, 2000, 8000, 12_000])
      expect(grown(n, day)).toBeCloseTo(capacity / (1 + (capacity / n - 1) * Math.exp(-r)), 6)
  })

  test('lies no more than one in a hundred over its chords where cultures are kept, and never under them', () => {
    const crowding = 1e-6
    for (const gain of [0.9, 1.4, 2])
      for (let crowded = 0.03; crowded <= 2.5; crowded += 0.01) {
        const left = crowded / crowding
        const ratio = grownByChords(left, { gain, crowding }) / grown(left, { gain, crowding })
        expect(ratio).toBeLessThanOrEqual(1 + 1e-12)
        expect(ratio).toBeGreaterThan(0.99)
      }
  })

  test('has its chords meet on the curve, whatever range is asked for', () => {
    const day = { gain: 1.6, crowding: 1e-6 }
    const all = chords(day, { from: 0, to: 5e6 })
    const some = chords(day, { from: 200_000, to: 400_000 })
    expect(some.length).toBeLessThan(all.length)
    for (const line of some) expect(all).toContainEqual(line)
    for (let left = 200_000; left <= 400_000; left += 10_000)
      expect(grownByChords(left, day)).toBeCloseTo(
        Math.min(...all.map(({ slope, offset }) => slope * left + offset)),
        6,
      )
  })

  test('is a straight line where nothing crowds, and nothing after a crash', () => {
    expect(chords({ gain: 2, crowding: 0 }, { from: 0, to: 10 })).toEqual([{ slope: 2, offset: 0 }])
    expect(grownByChords(500, { gain: 0, crowding: 1e-3 })).toBe(0)
  })
})

describe('a harvest', () => {
  test('goes neither over its share nor under the floor', () => {
    expect(mostOf(culture, { animals: 1000, day: 2 })).toBe(500)
    expect(mostOf(culture, { animals: 400, day: 2 })).toBe(100)
    expect(mostOf(culture, { animals: 250, day: 2 })).toBe(0)
  })

  test('thins what nobody eats, as far as the share and the floor let it', () => {
    expect(leftOf(culture, { animals: 1000, day: 2, taken: 100 })).toBe(600)
    // Half may go, so 700 of 1,400 stay; of what is fewer than it is thinned to, all do.
    expect(leftOf(culture, { animals: 1400, day: 2, taken: 100 })).toBe(700)
    expect(leftOf(culture, { animals: 650, day: 2, taken: 100 })).toBe(550)
    expect(leftOf({ ...culture, thinnedToAnimals: null }, { animals: 1400, day: 2, taken: 100 })).toBe(1300)
  })

  test('is so much less on day 0 as has gone elsewhere, and on no other', () => {
    const shared = { ...culture, goneShare: 0.3 }
    expect([0, 1].map((day) => mostOf(shared, { animals: 1000, day }))).toEqual([200, 500])
    expect(mostOf(shared, { animals: 400, day: 0 })).toBe(0)
    // 300 gone and 200 eaten of 1,000 leave 500; where nobody eats they are part of what is thinned.
    expect(leftOf(shared, { animals: 1000, day: 0, taken: 200 })).toBe(500)
    expect(leftOf(shared, { animals: 1000, day: 0, taken: 0 })).toBe(600)
  })

  test('is taken from the first day on, of a culture that is not in doubt', () => {
    expect([1, 2].map((day) => mayGive(culture, day))).toEqual([false, true])
    expect(mayGive({ ...culture, use: 'when-short' }, 2)).toBe(true)
    expect(mayGive({ ...culture, use: 'never' }, 2)).toBe(false)
  })
})

test('chords are as many as it takes: each lies from two to seven in a thousand under the curve', () => {
  const day = { gain: 2, crowding: 1 }
  const lines = chords(day, { from: 0, to: 9 })
  const ends = lines.slice(1).map(({ slope, offset }, index) => {
    const before = lines[index]!
    return (offset - before.offset) / (before.slope - slope)
  })
  expect(ends).toHaveLength(13)
  for (const [index, end] of ends.slice(1).entries()) {
    // Between a and b the curve x / (1 + x) is farthest over its chord where 1 + x is the geometric mean of 1 + a and 1 + b.
    const farthest = Math.sqrt((1 + ends[index]!) * (1 + end)) - 1
    const under = 1 - grownByChords(farthest, day) / grown(farthest, day)
    expect(under, `to ${end}`).toBeGreaterThan(0.002)
    expect(under, `to ${end}`).toBeLessThan(0.007)
  }
})
