import type { CultureOutlook } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { frameOf } from './chart-frame.ts'
import { lanes, tops } from './chart-lanes.ts'

const twoDigits = (n: number) => String(n).padStart(2, '0')
const day = (date: number, hour = 8) => `2026-11-${twoDigits(date)}T${twoDigits(hour)}:00:00.000Z`
const count = (at: string, densityPerMl: number) => ({
  ...{ factId: at, at, densityPerMl, lowerPerMl: densityPerMl * 0.9, upperPerMl: densityPerMl * 1.1 },
  eggRatio: null,
})
const point = (at: string, p50: number, p90 = p50 * 1.2) => ({
  ...{ at, p50, p90, p10: p50 * 0.8, p25: p50 * 0.9, p75: p50 * 1.1 },
})
const outlook = (part: Partial<CultureOutlook>): CultureOutlook =>
  ({ counts: [], behind: [], ahead: [], harvests: [], sentence: '', ...part }) as CultureOutlook

const room = { width: 380, timeZone: 'Europe/Lisbon' }
const floor = tops.density + lanes.density

describe('the frame of a culture’s chart', () => {
  it('holds every count and the middle of the forecast, though its upper edge runs away', () => {
    const { y, ticks } = frameOf(
      outlook({ counts: [count(day(20), 300)], ahead: [point(day(21), 320, 5000), point(day(25), 340, 90_000)] }),
      room,
    )
    expect(ticks.at(-1)).toBeGreaterThanOrEqual(330)
    expect(ticks.at(-1)).toBeLessThan(1000)
    expect(y(330)).toBeGreaterThan(tops.density)
    expect(y(90_000)).toBe(tops.density)
    expect(y(0)).toBe(floor)
  })

  it('stands at its floor over an empty culture', () => {
    const { y, ticks } = frameOf(outlook({ counts: [count(day(20), 0)] }), room)
    expect(y(0)).toBe(floor)
    expect(ticks.at(-1)).toBe(10)
  })

  it('has a left and a right for a culture counted once', () => {
    const { x, right } = frameOf(outlook({ counts: [count(day(20), 300)] }), room)
    expect(x(day(20))).toBe(46)
    expect(x(day(21))).toBe(right)
  })

  it('names midnights of the room’s own zone, as many as fit', () => {
    const long = outlook({ counts: [count(day(1, 9), 300), count(day(28, 9), 310)] })
    const { days } = frameOf(long, { width: 380, timeZone: 'America/New_York' })
    expect(days[0]?.at).toBe('2026-11-02T05:00:00Z')
    expect(days.length).toBeLessThanOrEqual(4)
    expect(frameOf(long, { width: 900, timeZone: 'America/New_York' }).days.length).toBeGreaterThan(days.length)
  })

  it('marks now where the forecast begins, and nowhere without one', () => {
    const { nowX, x } = frameOf(outlook({ counts: [count(day(20), 300)], ahead: [point(day(22), 310)] }), room)
    expect(nowX).toBe(x(day(22)))
    expect(frameOf(outlook({ counts: [count(day(20), 300)] }), room).nowX).toBeNull()
  })
})
