import { describe, expect, test } from 'vitest'
import { type Band, judge, type Watched } from './judge.ts'

const band: Band = {
  ...{ quantity: 'temperature', low: 24, high: 28, forMinutes: 10, silentAfterMinutes: 30, maxPerHour: null },
}
const nothing: Watched = {
  ...{ latest: null, since: null, lately: null, hour: null, isStuck: false, implausibleAt: null, heardFrom: 0 },
}
const minute = 60_000
const now = 1000 * minute
const seen = (value: number, since: number, at = 0): Watched => ({
  ...nothing,
  latest: { at: now - at * minute, value },
  since: now - since * minute,
  heardFrom: 0,
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
    expect(judge(band, { ...nothing, heardFrom: now - 31 * minute }, now)).toMatchObject({
      kind: 'silent',
    })
    expect(judge(band, { ...nothing, heardFrom: now - 29 * minute }, now)).toBe('undecided')
  })
  test('without limits is never too high or too low', () => {
    for (const value of [-1000, 1000])
      expect(judge({ ...band, low: null, high: null }, seen(value, 60), now)).toBe('keeps')
  })

  test('that reads what no water can be is not believed, and one that sends only nonsense is not silent', () => {
    const dry = { ...seen(55, 10), lately: { low: 48, high: 55 } }
    expect(judge(band, dry, now)).toEqual({ kind: 'implausible', value: 55 })
    expect(judge(band, { ...dry, lately: { low: 27, high: 55 } }, now)).toMatchObject({ kind: 'too_high' })
    const nonsense = { ...nothing, implausibleAt: now - minute }
    expect(judge(band, nonsense, now)).toEqual({ kind: 'implausible', value: null })
    expect(judge(band, { ...nonsense, implausibleAt: now - 31 * minute }, now)).toMatchObject({ kind: 'silent' })
  })

  test('that stands still for too long is stuck, unless the water is outside of its band', () => {
    expect(judge(band, { ...seen(26, 60), isStuck: true }, now)).toEqual({ kind: 'stuck', value: 26 })
    expect(judge(band, { ...seen(29, 60), isStuck: true }, now)).toMatchObject({ kind: 'too_high' })
  })

  test('is told of when it changes faster than it may, up or down', () => {
    const fast = { ...band, maxPerHour: 1 }
    const within = (low: number, high: number) => ({ ...seen(26, 5), hour: { low, high } })
    expect(judge(fast, within(25, 26), now)).toBe('undecided')
    expect(judge(fast, within(24.5, 26), now)).toEqual({ kind: 'too_fast', value: 1.5 })
    expect(judge(fast, within(26, 27.5), now)).toEqual({ kind: 'too_fast', value: -1.5 })
    expect(judge(band, within(20, 30), now)).toBe('undecided')
  })
})
