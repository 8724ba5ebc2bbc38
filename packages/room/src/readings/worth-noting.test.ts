import { describe, expect, test } from 'vitest'
import { worthNoting } from './worth-noting.ts'

const hourMs = 3_600_000
const hoursOf = (...means: number[]) => means.map((mean, index) => ({ hour: index * hourMs, mean, number: 60 }))
const after = (hours: number) => hours * hourMs
const first = { notedValue: null, notedUntil: null }

describe('of a gauge', () => {
  test('the first hour is noted, and nothing more while it stays as it was', () => {
    expect(worthNoting('temperature', { hours: hoursOf(26), ...first }, after(1))).toEqual([
      { from: 0, to: hourMs, mean: 26, readings: 60 },
    ])
    const known = { notedValue: 26, notedUntil: 0 }
    expect(worthNoting('temperature', { hours: hoursOf(26.1, 25.9, 26), ...known }, after(3))).toEqual([])
  })

  test('a day is noted as its mean, whatever it was', () => {
    const hours = hoursOf(...Array.from({ length: 24 }, (_, hour) => 26 + (hour % 2) / 10))
    const noted = worthNoting('temperature', { hours, notedValue: 26, notedUntil: 0 }, after(24))
    expect(noted).toHaveLength(1)
    expect(noted[0]).toMatchObject({ from: 0, to: 24 * hourMs, readings: 1440 })
    expect(noted[0]?.mean).toBeCloseTo(26.05)
  })

  test('a heater that sticks is noted hour by hour as it warms', () => {
    const known = { notedValue: 26, notedUntil: 0 }
    const noted = worthNoting('temperature', { hours: hoursOf(26, 27, 28.2), ...known }, after(3))
    expect(noted.map(({ mean }) => mean)).toEqual([26, 27, 28.2])
  })

  test('what no rule reads is not noted', () => {
    expect(worthNoting('redox', { hours: hoursOf(300), ...first }, after(1))).toEqual([])
  })
})
