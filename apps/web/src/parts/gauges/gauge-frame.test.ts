import { describe, expect, test } from 'vitest'
import { gaugeChart, gaugeFrame, runsOf } from './gauge-frame.ts'

const start = Date.parse('2026-03-10T00:00:00Z')
const point = (minute: number, mean = 25) => ({
  ...{ at: new Date(start + minute * 60_000).toISOString(), low: mean - 0.5, high: mean + 0.5, mean, number: 5 },
})

describe('a gauge’s chart', () => {
  test('breaks its line where nothing was read, and not because a device is late', () => {
    const points = [0, 5, 10, 17, 60, 65].map((minute) => point(minute))
    expect(runsOf({ points, stepS: 300 }).map((run) => run.length)).toEqual([4, 2])
  })
  test('does not break between the readings of a gauge that reads seldom', () => {
    const points = [0, 30, 60, 90, 240].map((minute) => point(minute))
    expect(runsOf({ points, stepS: 60 }).map((run) => run.length)).toEqual([4, 1])
  })
  test('holds extremes and limits between its edges', () => {
    const series = {
      gaugeId: '',
      from: point(0).at,
      to: point(60).at,
      stepS: 300,
      points: [point(0, 22), point(30, 31)],
    }
    const frame = gaugeFrame({ series, gauge: { low: 20, high: 28, saturation: null }, width: 400, height: 186 })
    for (const value of [20, 21.5, 31.5]) {
      expect(frame.y(value)).toBeLessThanOrEqual(frame.floor)
      expect(frame.y(value)).toBeGreaterThanOrEqual(gaugeChart.top)
    }
    expect(frame.y(31)).toBeLessThan(frame.y(22))
    expect([frame.x(series.from), frame.x(series.to)]).toEqual([gaugeChart.left, 400 - gaugeChart.right])
  })
  test('of oxygen holds the line at which the water is saturated', () => {
    const saturation = { mgPerL: 6.6, temperatureC: 26, salinity: 36, isRead: { temperature: true, salinity: true } }
    const series = { gaugeId: '', from: point(0).at, to: point(60).at, stepS: 300, points: [point(0, 4), point(30, 3)] }
    const frame = gaugeFrame({ series, gauge: { low: null, high: null, saturation }, width: 400, height: 186 })
    expect(frame.y(6.6)).toBeGreaterThanOrEqual(gaugeChart.top)
    expect(frame.y(6.6)).toBeLessThan(frame.y(4))
  })
  test('of one reading is not empty', () => {
    const series = { gaugeId: '', from: point(0).at, to: point(60).at, stepS: 300, points: [point(30)] }
    const frame = gaugeFrame({ series, gauge: { low: null, high: null, saturation: null }, width: 400, height: 186 })
    expect(frame.spreads[0]).toMatch(/^M/)
    expect(frame.ticks.length).toBeGreaterThan(1)
  })
})
