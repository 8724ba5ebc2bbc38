import { describe, expect, test } from 'vitest'
import { judge } from './judge.ts'

const band = { low: 24, high: 28, forMinutes: 10, silentAfterMinutes: 30 }
const minute = 60_000
const now = 1000 * minute
const seen = (value: number, since: number, at = 0) => ({
  latest: { at: now - at * minute, value },
  since: now - since * minute,
  setUpAt: 0,
})

describe('a gauge', () => {
  test('is in trouble when it has been outside of its band for as long as counts, and not sooner', () => {
    expect(judge(band, seen(28.1, 9), now)).toBe('undecided')
    expect(judge(band, seen(28.1, 10), now)).toEqual({ kind: 'too_high', value: 28.1 })
    expect(judge(band, seen(23.9, 10), now)).toEqual({ kind: 'too_low', value: 23.9 })
  })
  test('keeps to its band when it has been inside for as long, its limits with it', () => {
    expect(judge(band, seen(28, 9), now)).toBe('undecided')
    for (const value of [24, 26, 28]) expect(judge(band, seen(value, 10), now)).toBe('keeps')
  })
  test('is silent when nothing came for too long, whatever it read last, and when it never read anything', () => {
    expect(judge(band, seen(26, 60, 30), now)).toBe('keeps')
    expect(judge(band, seen(29, 60, 31), now)).toEqual({ kind: 'silent', value: null })
    expect(judge(band, { latest: null, since: null, setUpAt: now - 31 * minute }, now)).toMatchObject({
      kind: 'silent',
    })
    expect(judge(band, { latest: null, since: null, setUpAt: now - 29 * minute }, now)).toBe('undecided')
  })
  test('without limits is never too high or too low', () => {
    for (const value of [-1000, 1000])
      expect(judge({ ...band, low: null, high: null }, seen(value, 60), now)).toBe('keeps')
  })
})
