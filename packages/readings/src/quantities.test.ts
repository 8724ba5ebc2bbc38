import { expect, test } from 'vitest'
import { inKeptUnit } from './quantities.ts'

test('a value comes in the unit that is kept, whichever it was posted in', () => {
  expect(inKeptUnit('temperature', 77, 'F')).toBeCloseTo(25)
  // The triple point of water: 273.16 K is 0.01 degrees Celsius (SI Brochure, 9th edition 2019, section 2.3.1).
  expect(inKeptUnit('temperature', 273.16, 'K')).toBeCloseTo(0.01)
  expect(inKeptUnit('level', 1.2, 'm')).toBeCloseTo(120)
  expect(inKeptUnit('redox', 0.35, 'V')).toBeCloseTo(350)
  expect(inKeptUnit('ph', 8.1, null)).toBe(8.1)
})

test('a unit of something else is none, nor is a word that every object has', () => {
  for (const unit of ['kg', 'pH', 'constructor', '__proto__', ''])
    expect(inKeptUnit('temperature', 25, unit)).toBeNull()
})
