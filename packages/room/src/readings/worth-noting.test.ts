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

  test('as much is told anew as a good probe or test tells apart, and no less', () => {
    const isTold = (quantity: Parameters<typeof worthNoting>[0], from: number, to: number) =>
      worthNoting(quantity, { hours: hoursOf(to), notedValue: from, notedUntil: 0 }, after(1)).length === 1
    for (const [quantity, from, step] of [
      ['temperature', 0, 0.3],
      ['salinity', 0, 0.5],
      ['ph', 0, 0.1],
      ['oxygen', 0, 0.5],
    ] as const)
      for (const way of [1, -1])
        expect([isTold(quantity, from, way * step), isTold(quantity, from, way * step * 0.95)], quantity).toEqual([
          ...[true, false],
        ])
  })

  test('a level that holds is noted when a day of it is over, and what differs within a record ends that', () => {
    const known = { notedValue: 26, notedUntil: 0 }
    const of = (hours: number, now: number) =>
      worthNoting('temperature', { hours: hoursOf(...new Array(hours).fill(26)), ...known }, after(now)).map(
        ({ from, to }) => [from / hourMs, to / hourMs],
      )
    expect([of(23, 23), of(24, 24)]).toEqual([[], [[0, 24]]])
    // The second day has its own record.
    expect(of(26, 26)).toEqual([
      [0, 24],
      [24, 26],
    ])
    // Means are by how many readings there were.
    const uneven = [
      { hour: 0, mean: 26, number: 30 },
      { hour: hourMs, mean: 26.2, number: 10 },
    ]
    expect(worthNoting('temperature', { hours: uneven, ...first }, after(2))).toEqual([
      { from: 0, to: 2 * hourMs, mean: expect.closeTo(26.05, 12), readings: 40 },
    ])
    expect(worthNoting('temperature', { hours: [], ...first }, after(2))).toEqual([])
  })
})
