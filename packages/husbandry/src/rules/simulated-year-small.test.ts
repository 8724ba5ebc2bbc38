import { expect, test } from 'vitest'
import { lives, liveThrough, median, small, spread } from '../testing/simulated-year.ts'

test('half a year of a small room asks one person for no more than one person can do', () => {
  const year = liveThrough(small)
  const at = spread('small room', year)
  expect(lives(year.room, 'hatch')).toBeGreaterThan(10)
  expect(year.ordinary.length).toBeGreaterThan(10)
  // One line of an ordinary day is the second feed of the backup, which starves on one; another the feed of Artemia that
  // larvae get in the sixteen hours of light over their tanks (with twelve it is 43).
  expect(median(year.ordinary)).toBeLessThanOrEqual(44)
  expect(at(0.1)).toBeLessThanOrEqual(32)
  expect(at(0.5)).toBeLessThanOrEqual(42)
  expect(at(0.9)).toBeLessThanOrEqual(52)
}, 900_000)
