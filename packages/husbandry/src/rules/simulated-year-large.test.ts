import { expect, test } from 'vitest'
import { larger, lives, liveThrough, spread } from '../testing/simulated-year.ts'

test('a year of a room of four nurseries: no rule throws, every rule asks, and lists stay of a size that people can do', () => {
  const year = liveThrough(larger)
  const at = spread('four nurseries', year)
  // A year in which nothing spawned, hatched or grew up would prove nothing.
  expect(lives(year.room, 'spawning')).toBeGreaterThan(10)
  expect(lives(year.room, 'hatch')).toBeGreaterThan(10)
  // Without exception: what never asks in a year of everything is a rule that nobody has seen at work.
  expect(year.silent).toEqual([])
  expect(at(0)).toBeGreaterThan(5)
  expect(at(0.5)).toBeLessThan(80)
  expect(at(1)).toBeLessThan(150)
}, 900_000)
