import { expect, test } from 'vitest'
import { larger, lives, liveThrough, spread } from '../testing/simulated-room.ts'

test('nine months of a room of four nurseries: no rule throws, every rule asks, and lists stay of a size that people can do', () => {
  const lived = liveThrough(larger)
  const at = spread('four nurseries', lived)
  // Months in which nothing spawned, hatched or grew up would prove nothing.
  expect(lives(lived.room, 'spawning')).toBeGreaterThan(10)
  expect(lives(lived.room, 'hatch')).toBeGreaterThan(10)
  // Without exception: what never asks in nine months of everything is a rule that nobody has seen at work.
  expect(lived.silent).toEqual([])
  expect(at(0)).toBeGreaterThan(5)
  expect(at(0.5)).toBeLessThan(80)
  expect(at(1)).toBeLessThan(150)
}, 900_000)
