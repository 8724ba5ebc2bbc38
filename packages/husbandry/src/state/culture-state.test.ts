import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { steadyCulture } from '../testing/steady-culture.ts'
import { cultureHistory, cultureRecord } from './culture-history.ts'
import { cultureOutlook, densityAt } from './culture-state.ts'
import { growthBetweenCounts, isFallingByCounts } from './culture-trend.ts'
import { missingWater } from './vessel-level.ts'

const until = '2026-03-11T00:00:00.000Z'
const at = '2026-03-10T07:00:00.000Z'
const startedAt = '2026-03-01T08:00:00.000Z'

describe('the density of a culture', () => {
  test('is the count, less each part that was taken out since, plus what was put in', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, volumeL: 10 })
    room.count(culture, '2026-03-10T06:00:00.000Z', [200, 200])
    room.fact('harvest', culture.id, '2026-03-10T06:10:00.000Z', { volumeL: 2, parts: [{ to: 'drain', volumeL: 2 }] })
    room.fact('water_change', culture.id, '2026-03-10T06:20:00.000Z', { removedL: 1, addedL: 3 })
    room.fact('inoculation', culture.id, '2026-03-10T06:30:00.000Z', { animals: 100_000 })
    // 200 x 0.8 x 0.9 + 100,000 / 10,000
    expect(densityAt(room.build(), culture, { at, until })?.densityPerMl).toBeCloseTo(154, 9)
    const joins = densityAt(room.build(), culture, { at, until })?.because.map((link) => link.joins)
    expect(joins).toEqual([null, 'times', 'times', 'plus'])
  })

  test('a day after the count is the estimate from all of them, said to be one', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, concentrateId: null })
    room.fact('inoculation', culture.id, startedAt, { densityPerMl: 63 })
    for (let day = 2; day <= 8; day += 1)
      room.count(culture, `2026-03-0${day}T07:00:00.000Z`, [Math.round(63 * Math.exp(0.3 * (day - 1)))])
    const last = 63 * Math.exp(0.3 * 7)
    const now = densityAt(room.build(), culture, { at, until })
    expect(now?.isEstimated).toBe(true)
    expect(now?.densityPerMl).toBeGreaterThan(last)
    expect(now?.densityPerMl).toBeLessThanOrEqual(2 * last)
    expect(now?.because.at(-1)).toMatchObject({ joins: 'equals', origin: { by: 'grown since, by all counts' } })
  })

  test('is never believed to be more than twice what was last seen, however fast it has grown before', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, concentrateId: null })
    for (let day = 1; day <= 4; day += 1)
      room.count(culture, `2026-03-0${day}T09:00:00.000Z`, [Math.round(20 * Math.exp(0.6 * (day - 1)))])
    const last = Math.round(20 * Math.exp(0.6 * 3))
    const now = densityAt(room.build(), culture, { at, until })
    expect(cultureOutlook(room.build(), culture, { at, until })?.estimate.densityPerMl).toBeGreaterThan(2.5 * last)
    expect(now?.densityPerMl).toBeCloseTo(2 * last, 6)
  })

  test('is known for sixty days from what was seen', () => {
    const seen = (startedAt: string) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt: '2025-01-01T08:00:00.000Z', kind: 'copepod', strain: null })
      room.count(culture, startedAt, [100])
      return densityAt(room.build(), culture, { at, until })?.densityPerMl ?? null
    }
    expect(seen('2026-01-10T00:30:00.000Z')).toBe(100)
    expect(seen('2026-01-09T23:30:00.000Z')).toBeNull()
  })

  test('is not known from what was seen more than two months ago, or never', () => {
    const room = new SnapshotBuilder()
    const old = room.culture({ startedAt: '2024-01-01T08:00:00.000Z' })
    room.fact('inoculation', old.id, old.startedAt, { densityPerMl: 100 })
    expect(densityAt(room.build(), old, { at, until })).toBeNull()
    room.count(old, '2026-03-09T06:00:00.000Z', [150])
    expect(cultureOutlook(room.build(), old, { at, until })?.estimate.densityPerMl).toBeGreaterThan(50)
  })

  test('of a restarted culture is what went into the clean vessel', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, volumeL: 10 })
    room.count(culture, '2026-03-09T06:00:00.000Z', [400])
    room.fact('care', culture.id, '2026-03-10T06:00:00.000Z', { act: 'restart_culture' })
    room.fact('inoculation', culture.id, '2026-03-10T06:00:00.000Z', { animals: 1e6 })
    expect(densityAt(room.build(), culture, { at, until })?.densityPerMl).toBe(100)
  })
})

describe('a culture’s record', () => {
  test('counts of one instant are one observation, whichever came first', () => {
    const history = (animals: number[]) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt })
      for (const each of animals) room.count(culture, '2026-03-05T06:00:00.000Z', [each])
      return cultureHistory(cultureRecord(room.build(), culture, { until }), culture)
    }
    expect(history([100, 200])?.observations).toMatchObject([{ densityPerMl: 150, animalsCounted: 300 }])
    expect(history([100, 200])).toEqual(history([200, 100]))
    expect(history([])).toBeNull()
  })

  test('growth between counts has the harvest added back', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, volumeL: 10 })
    room.count(culture, '2026-03-05T06:00:00.000Z', [200])
    room.fact('harvest', culture.id, '2026-03-05T07:00:00.000Z', { volumeL: 5, parts: [{ to: 'drain', volumeL: 5 }] })
    room.count(culture, '2026-03-06T06:00:00.000Z', [200])
    const [growth] = growthBetweenCounts(cultureRecord(room.build(), culture, { until }))
    expect(growth).toBeCloseTo(Math.LN2, 9)
  })

  test('of nothing, at once, or without another there is no growth; more was taken than grew where it is below nothing', () => {
    const growths = (...counts: [string, number][]) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt, volumeL: 10 })
      for (const [time, perMl] of counts) room.count(culture, `2026-03-${time}:00.000Z`, [perMl])
      return growthBetweenCounts(cultureRecord(room.build(), culture, { until }))
    }
    expect(growths(['05T06:00', 200])).toEqual([])
    expect(growths(['05T06:00', 200], ['05T06:00', 300])).toEqual([])
    expect(growths(['05T06:00', 200], ['06T06:00', 0], ['07T06:00', 100])).toEqual([])
    expect(growths(['05T06:00', 200], ['07T06:00', 100])).toEqual([expect.closeTo(-Math.LN2 / 2, 9)])
  })

  test('falls once two intervals in a row lost more than a twentieth a day', () => {
    const falls = (...perMl: number[]) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ startedAt, volumeL: 10 })
      for (const [index, each] of perMl.entries()) room.count(culture, `2026-03-0${5 + index}T06:00:00.000Z`, [each])
      return isFallingByCounts(cultureRecord(room.build(), culture, { until }))
    }
    expect([falls(1000, 900), falls(1000, 900, 800), falls(1000, 900, 800, 900)]).toEqual([false, true, false])
    // By four in a hundred a day it may as well stand.
    expect(falls(1000, 960, 922)).toBe(false)
    expect(falls(1000, 960, 880)).toBe(false)
  })

  test('tells what was put in after the first: as many in a millilitre more, on its day', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, volumeL: 10 })
    const put = (time: string, animals: number) =>
      room.fact('inoculation', culture.id, `2026-03-${time}:00.000Z`, { animals })
    put('01T08:00', 6e5)
    room.count(culture, '2026-03-03T08:00:00.000Z', [80])
    put('04T08:00', 2e5)
    const history = cultureHistory(cultureRecord(room.build(), culture, { until }), culture)
    expect(history?.observations).toMatchObject([
      { day: 0, densityPerMl: 60 },
      { day: 2, densityPerMl: 80 },
    ])
    expect(history?.additions).toEqual([{ day: 3, addedPerMl: 20 }])
    // One that was counted before anything was put in begins with the count.
    const bought = new SnapshotBuilder()
    const other = bought.culture({ startedAt, volumeL: 10 })
    bought.count(other, '2026-03-02T08:00:00.000Z', [80])
    bought.fact('inoculation', other.id, '2026-03-04T08:00:00.000Z', { densityPerMl: 5 })
    const from = cultureHistory(cultureRecord(bought.build(), other, { until }), other)
    expect([from?.observations.length, from?.additions]).toEqual([1, [{ day: 3, addedPerMl: 5 }]])
  })

  test('a culture held level by its harvest does not fall', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date: '2026-03-10' })
    expect(isFallingByCounts(cultureRecord(room.build(), culture, { until }))).toBe(false)
  })
})

test('litres missing from a vessel are what went out and did not come back, within its volume', () => {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt, volumeL: 10 })
  const day = husbandryDay({ room: room.snapshot.room, date: '2026-03-10' })
  const missing = () => missingWater(room.build(), culture, day).litres
  expect(missing()).toBe(0)
  room.fact('harvest', culture.id, '2026-03-10T06:00:00.000Z', { volumeL: 4, parts: [{ to: 'drain', volumeL: 4 }] })
  room.fact('water_change', culture.id, '2026-03-10T06:30:00.000Z', { removedL: 0, addedL: 1.5 })
  expect(missing()).toBe(2.5)
  room.fact('water_change', culture.id, '2026-03-10T06:40:00.000Z', { removedL: 0, addedL: 9 })
  expect(missing()).toBe(0)
  room.fact('harvest', culture.id, '2026-03-10T06:50:00.000Z', { volumeL: 9, parts: [{ to: 'drain', volumeL: 9 }] })
  room.fact('harvest', culture.id, '2026-03-10T06:55:00.000Z', { volumeL: 9, parts: [{ to: 'drain', volumeL: 9 }] })
  expect(missing()).toBe(10)
})

test('what went out before noon of the day before has been filled up since, written down or not', () => {
  const missing = (at: string) => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt, volumeL: 10 })
    room.fact('harvest', culture.id, at, { volumeL: 4, parts: [{ to: 'drain', volumeL: 4 }] })
    return missingWater(room.build(), culture, husbandryDay({ room: room.snapshot.room, date: '2026-03-10' })).litres
  }
  expect([missing('2026-03-09T12:05:00.000Z'), missing('2026-03-09T11:55:00.000Z')]).toEqual([4, 0])
})
