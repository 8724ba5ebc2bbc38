import fc from 'fast-check'
import { expect, test } from 'vitest'
import { clownfishGrowth } from '../species/clownfish-growth.ts'
import { weightGOf } from '../species/juvenile-growth.ts'
import { weanedFoods } from '../species/schema.ts'
import { shareAt } from './juvenile-ration.ts'

const usual = {
  ...{ smallShare: 0.1, shareOfWeight: 0.05, smallFrozenShare: 0.2, frozenShare: 0.1 },
  ...{ smallUntilMm: 20, grownAtMm: 40 },
} as Parameters<typeof shareAt>[2]

test('a day’s share of their weight falls straight from that of the small to that of the grown', () => {
  expect([5, 20, 30, 40, 80].map((mm) => Number(shareAt(mm, 'dry', usual).toFixed(4)))).toEqual([
    0.1, 0.1, 0.075, 0.05, 0.05,
  ])
})

test('of frozen food, which holds its water, it falls between shares of its own', () => {
  expect([5, 30, 80].map((mm) => Number(shareAt(mm, 'frozen', usual).toFixed(4)))).toEqual([0.2, 0.15, 0.1])
})

test('where a room has them grown as soon as they are not small, it falls at once and not beyond', () => {
  const atOnce = { ...usual, grownAtMm: 20 }
  expect([19, 20, 21, 60].map((mm) => Number(shareAt(mm, 'dry', atOnce).toFixed(4)))).toEqual([0.1, 0.1, 0.05, 0.05])
})

test('a longer fish never gets fewer grams', () => {
  const mm = fc.double({ min: 5, max: 80, noNaN: true })
  fc.assert(
    fc.property(mm, mm, fc.constantFrom(...weanedFoods), (one, other, food) => {
      const [short, long] = [Math.min(one, other), Math.max(one, other)]
      const grams = (length: number) => weightGOf(clownfishGrowth, length) * shareAt(length, food, usual)
      expect(grams(long)).toBeGreaterThanOrEqual(grams(short) - 1e-9)
    }),
  )
})
