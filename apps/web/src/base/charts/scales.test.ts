import { describe, expect, it } from 'vitest'
import { amountScale, timeScale } from './scales.ts'

const lane = { floor: 190, ceiling: 0 }

describe('a scale of amounts', () => {
  it('stands on nothing and ends on a round line above what has to be seen', () => {
    const { toY, ticks } = amountScale(370, lane)
    expect(ticks).toEqual([0, 100, 200, 300, 400])
    expect(toY(0)).toBe(190)
    expect(toY(400)).toBe(0)
    expect(toY(100)).toBe(142.5)
  })

  it.each([1, 7, 12, 99, 260, 1234, 48_000, 2.3e6])(
    'has three to seven lines up to %s, the top one not below it',
    (highest) => {
      const { ticks, toY } = amountScale(highest, lane)
      expect(ticks.length).toBeGreaterThanOrEqual(3)
      expect(ticks.length).toBeLessThanOrEqual(7)
      expect(ticks.at(-1)).toBeGreaterThanOrEqual(highest)
      expect(toY(ticks.at(-1) ?? 0)).toBe(lane.ceiling)
    },
  )

  it('keeps what runs away at its edge', () => {
    const { toY } = amountScale(370, lane)
    expect(toY(9000)).toBe(0)
    expect(toY(-5)).toBe(190)
  })
})

describe('a scale of time', () => {
  it('runs evenly from its start to its end', () => {
    const span = { start: new Date('2026-11-24T00:00:00Z'), end: new Date('2026-11-26T00:00:00Z') }
    const toX = timeScale(span, { left: 40, right: 240 })
    expect(toX(span.start)).toBe(40)
    expect(toX('2026-11-25T00:00:00.000Z')).toBe(140)
    expect(toX(span.end)).toBe(240)
  })
})
