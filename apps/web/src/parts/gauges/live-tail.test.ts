import { expect, test } from 'vitest'
import { withTail } from './live-tail.ts'

const at = (second: number) => new Date(Date.parse('2026-03-10T08:00:00Z') + second * 1000).toISOString()
const series = {
  ...{ gaugeId: '', from: at(0), to: at(120), stepS: 12 },
  points: [{ at: at(24), low: 25, high: 25, mean: 25, number: 2 }],
}
const ends = (latest: number) => withTail(series, { at: at(latest), value: 26 }).points.map(({ mean }) => mean)

test('the newest reading ends the line once, and only where it lies in the span', () => {
  expect(ends(60)).toEqual([25, 26])
  expect(ends(30)).toEqual([25])
  expect(ends(121)).toEqual([25])
  expect(ends(-1)).toEqual([25])
  expect(withTail(series, null)).toBe(series)
})
