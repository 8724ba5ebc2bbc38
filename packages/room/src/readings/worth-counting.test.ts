import { describe, expect, test } from 'vitest'
import { worthCounting } from './worth-counting.ts'

const now = Date.parse('2026-03-10T12:20:00Z')
const minuteMs = 60_000
const gauge = {
  ...({ quantity: 'temperature', stuckAfterHours: 24, notedUntil: null, notedValue: null } as const),
  ...{ isInVessel: true, isDisbelieved: false },
}
/** A reading each ten minutes, the last so many minutes ago. */
const readings = (number: number, { minutesAgo = 0, value = (index: number) => 25 + (index % 2) / 5 } = {}) =>
  Array.from({ length: number }, (_, index) => ({
    at: now - (minutesAgo + 10 * (number - 1 - index)) * minuteMs,
    value: value(index),
  }))
const why = (of: Partial<Parameters<typeof worthCounting>[0]>, brought = readings(12)) => {
  const { noted, why: said } = worthCounting({ ...gauge, ...of }, brought, now)
  expect(noted).toEqual([])
  return said
}

describe('readings that a person brings', () => {
  test('count by means of their hours, up to now', () => {
    const { noted, why: said } = worthCounting(gauge, readings(6), now)
    expect(noted.map(({ from, to, readings: number }) => [new Date(from).toISOString(), to, number])).toEqual([
      ['2026-03-10T11:00:00.000Z', now, 6],
    ])
    expect(noted[0]?.mean).toBeCloseTo(25.1)
    expect(said).toMatch(/tasks and forecasts go by the latest/)
  })
  test('count from what the room knows on', () => {
    const known = { notedUntil: Date.parse('2026-03-10T12:00:00Z'), notedValue: 22 }
    expect(worthCounting({ ...gauge, ...known }, readings(12), now).noted).toMatchObject([
      { from: known.notedUntil, readings: 3 },
    ])
    expect(why({ ...known, notedValue: 25.1 })).toMatch(/read what the tasks know already/)
    expect(why({ notedUntil: now + 1 })).toMatch(/up to a later time/)
  })
  test('do not where they are old, of no water, of a gauge that is stuck or is not asked for', () => {
    expect(why({}, readings(12, { minutesAgo: 73 * 60 }))).toMatch(/more than three days old/)
    expect(why({}, readings(12, { value: () => 55 }))).toMatch(/no water here is outside of 0 to 40/)
    expect(why({}, readings(150, { value: () => 25 }))).toMatch(/one and the same value for 24 hours/)
    expect(why({ isDisbelieved: true })).toMatch(/an alarm says/)
    expect(why({ quantity: 'redox' })).toMatch(/no task asks for redox potential here/)
    expect(why({ isInVessel: false })).toMatch(/no task asks for temperature here/)
    // A gauge that may stand still is believed.
    const still = readings(150, { value: () => 25 })
    expect(worthCounting({ ...gauge, stuckAfterHours: null }, still, now).noted.length).toBe(1)
  })

  const hourMs = 60 * minuteMs
  const each = (hours: number, number: number, value: (index: number) => number, last = now) =>
    Array.from({ length: number }, (_, index) => ({
      at: last - hours * hourMs * (number - 1 - index),
      value: value(index),
    }))
  const counts = (of: object, brought: Parameters<typeof worthCounting>[1]) =>
    worthCounting({ ...gauge, ...of }, brought, now).noted.length > 0
  test('are of the last three days, the newest of them last however they were brought', () => {
    expect(
      [71.9, 72].map((hours) =>
        counts(
          {},
          each(1, 1, () => 25, now - hours * hourMs),
        ),
      ),
    ).toEqual([true, false])
    const { noted } = worthCounting(gauge, each(1, 3, (index) => 24 + index).reverse(), now)
    expect(noted.map(({ mean }) => mean)).toEqual([24, 25, 26])
  })
  test('are stuck from ten of one value on that lie as long apart as the gauge says', () => {
    // Ten readings, the first of them nine steps before the last.
    expect(
      [24 / 9, 2.6].map((hours) =>
        counts(
          {},
          each(hours, 10, () => 25),
        ),
      ),
    ).toEqual([false, true])
    expect(
      counts(
        {},
        each(4, 9, () => 25),
      ),
    ).toBe(true)
    // What differs before does not count, and what differs last ends it.
    expect(
      counts(
        {},
        each(24 / 9, 11, (index) => (index === 0 ? 24 : 25)),
      ),
    ).toBe(false)
    expect(
      counts(
        {},
        each(24 / 9, 11, (index) => (index === 10 ? 24 : 25)),
      ),
    ).toBe(true)
    expect(
      counts(
        {},
        each(24 / 9, 10, (index) => (index === 5 ? 24 : 25)),
      ),
    ).toBe(true)
  })
  test('are plausible to the ends of what water here can be, by the mean of an hour', () => {
    expect(
      [0, 40, -0.1, 40.1].map((value) =>
        counts(
          {},
          each(1, 1, () => value),
        ),
      ),
    ).toEqual([true, true, false, false])
    const known = { notedUntil: now, notedValue: 20 }
    expect(
      counts(
        known,
        each(1, 2, () => 25),
      ),
    ).toBe(true)
    expect(
      counts(
        { notedUntil: now + 1, notedValue: 20 },
        each(1, 2, () => 25),
      ),
    ).toBe(false)
  })
})
