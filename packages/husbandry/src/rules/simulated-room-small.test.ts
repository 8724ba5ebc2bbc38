import { expect, test } from 'vitest'
import { lives, liveThrough, median, small, spread } from '../testing/simulated-room.ts'

test('half a year of a small room asks one person for no more than one person can do', () => {
  const lived = liveThrough(small)
  const at = spread('small room', lived)
  expect(lives(lived.room, 'hatch')).toBeGreaterThan(10)
  expect(lived.ordinary.length).toBeGreaterThan(10)
  // One line of an ordinary day is the second feed of the backup, which starves on one; another the feed of Artemia that
  // larvae get in the sixteen hours of light over their tanks (with twelve it is 43).
  expect(median(lived.ordinary)).toBeLessThanOrEqual(44)
  expect(at(0.1)).toBeLessThanOrEqual(32)
  expect(at(0.5)).toBeLessThanOrEqual(42)
  expect(at(0.9)).toBeLessThanOrEqual(52)
}, 900_000)
