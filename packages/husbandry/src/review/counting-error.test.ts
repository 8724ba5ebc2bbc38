import { expect, test } from 'vitest'
import { countedOf, exactly, shifted, together } from './counting-error.ts'

const interval = (lower: number, upper: number) => ({ lower, upper })

test('up to a hundred are counted one by one, of more larvae and eggs a tenth, and juveniles always', () => {
  for (const counted of [countedOf('larvae', [100]), countedOf('eggs', [0]), countedOf('juveniles', [3000])])
    expect(counted).toEqual(exactly(counted.number))
  // Garwood 1936, as tabled by Johnson, Kemp & Kotz 2005, 4.7.3: of 11 in a tenth 5.49 to 19.68, of 30 20.24 to 42.83.
  for (const of of ['larvae', 'eggs'] as const) {
    expect(countedOf(of, [110])).toEqual({ number: 110, standardError: Math.sqrt(1100), interval: interval(55, 197) })
    expect(countedOf(of, [300])).toEqual({ number: 300, standardError: Math.sqrt(3000), interval: interval(202, 428) })
    expect(countedOf(of, [101]).standardError).toBeGreaterThan(0)
  }
})

test('repeats are off by what they differ by, and by no less than none', () => {
  // Standard error 10 / sqrt 3; 1.96 of it are 11.3.
  expect(countedOf('juveniles', [190, 210, 200])).toEqual({
    ...{ number: 200, standardError: expect.closeTo(10 / Math.sqrt(3), 12), interval: interval(189, 211) },
  })
  expect(countedOf('larvae', [0, 10]).interval).toEqual(interval(0, 15))
})

test('two numbers together are off by the root of both squares', () => {
  const [a, b] = [countedOf('larvae', [300]), countedOf('larvae', [190, 210])]
  expect(together([a])).toBe(a)
  const error = Math.hypot(Math.sqrt(3000), 10)
  expect(together([a, b])).toEqual({
    ...{ number: 500, standardError: expect.closeTo(error, 12) },
    interval: interval(Math.round(500 - 1.96 * error), Math.round(500 + 1.96 * error)),
  })
  expect(together([countedOf('larvae', [0, 10]), exactly(0)]).interval.lower).toBe(0)
  expect(together([])).toEqual(exactly(0))
})

test('what left since a count takes its error along, and never more of it than there are', () => {
  const counted = { number: 100, standardError: 10, interval: interval(80, 120) }
  expect(shifted(counted, 70)).toEqual({ number: 70, standardError: 10, interval: interval(50, 90) })
  expect(shifted(counted, 10).interval).toEqual(interval(0, 30))
  expect(shifted(counted, 130).interval).toEqual(interval(110, 150))
  expect(shifted(exactly(100), 70)).toEqual(exactly(70))
  // An interval that did not reach to its own number does so now.
  expect(shifted({ ...counted, interval: interval(110, 90) }, 70).interval).toEqual(interval(70, 70))
})
