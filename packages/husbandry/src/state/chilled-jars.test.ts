import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { chilledJars, shareAliveAfter } from './chilled-jars.ts'

const date = '2026-03-10'
const at = (day: number, time = '08:00') => `2026-03-${String(day).padStart(2, '0')}T${time}:00.000Z`

/** Jars of half a litre of 200 per mL: 100,000, of which sieving loses a tenth. */
function cold(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z', ...given })
  const batch = room.batch({ hatchedOn: '2026-03-01', larvae: 300 })
  const chill = (day: number, litres = 0.5) => {
    room.count(culture, at(day, '07:00'), [200, 200, 200])
    const parts = [
      { to: 'chilled_reserve' as const, volumeL: litres },
      { to: 'drain' as const, volumeL: 1 },
    ]
    room.fact('harvest', culture.id, at(day), { volumeL: litres + 1, parts })
  }
  const draw = (day: number, amount: object, time = '09:00') =>
    room.fact('feeding', batch.id, at(day, time), {
      ...{ food: 'rotifers', fromCultureId: culture.id, isChilled: true },
      ...amount,
    })
  const jars = (oldestDays = 14) =>
    chilledJars(room.build(), { day: husbandryDay({ room: room.snapshot.room, date }), oldestDays })
  return { room, culture, chill, draw, jars }
}
const filled = 90_000

describe('jars in the cold', () => {
  test('hold what was put into them, less what has died since, the oldest first', () => {
    const { chill, jars } = cold()
    chill(9)
    chill(10)
    chill(3)
    expect(jars().map(({ chilledOn, ageDays }) => [chilledOn, ageDays])).toEqual([
      ['2026-03-03', 7],
      ['2026-03-09', 1],
      ['2026-03-10', 0],
    ])
    for (const { ageDays, alive } of jars()) expect(alive / (filled * shareAliveAfter(ageDays))).toBeCloseTo(1, 9)
    expect(shareAliveAfter(0)).toBe(1)
    expect(shareAliveAfter(-3)).toBe(1)
    // Followed for 60 days, and no further.
    expect(shareAliveAfter(60)).toBeLessThan(shareAliveAfter(59))
    expect(shareAliveAfter(61)).toBe(shareAliveAfter(60))
  })

  test('are food until they are too old, of strains that live through it, where somebody had counted', () => {
    const { chill, jars, room } = cold()
    chill(3)
    expect([jars(8).length, jars(7).length]).toEqual([1, 0])
    room.snapshot.facts = room.snapshot.facts.filter(({ kind }) => kind !== 'count')
    expect(jars()).toEqual([])
    const small = cold({ strain: 'SS' })
    small.chill(9)
    expect(small.jars()).toEqual([])
    const pods = cold({ kind: 'copepod', strain: null })
    pods.chill(9)
    expect(pods.jars()).toEqual([])
  })

  test('are drawn from the oldest on: so many that live, or so many mL as they are kept, 20,000 per mL with the dead', () => {
    const { chill, draw, jars } = cold()
    chill(9)
    chill(10)
    draw(10, { animals: 30_000 })
    const dayOld = filled * shareAliveAfter(1)
    expect(jars()[0]!.alive).toBeCloseTo(dayOld - 30_000, 6)
    expect(jars()[1]!.alive).toBeCloseTo(filled, 6)
    // More than the first holds comes out of the second.
    draw(10, { animals: dayOld }, '09:30')
    expect(jars().map(({ chilledOn }) => chilledOn)).toEqual(['2026-03-10'])
    expect(jars()[0]!.alive).toBeCloseTo(filled - 30_000, 3)
    draw(10, { amountMl: 1 }, '10:00')
    expect(jars()[0]!.alive).toBeCloseTo(filled - 30_000 - 20_000, 3)
    // What was drawn before a jar was filled is not out of it, and a feed without an amount takes nothing.
    draw(8, { animals: 50_000 })
    draw(10, {}, '11:00')
    expect(jars()[0]!.alive).toBeCloseTo(filled - 50_000, 3)
  })

  test('are gone once they are discarded: that of a date, or all that were too old by then', () => {
    const { chill, jars, room, culture } = cold()
    for (const day of [1, 3, 9]) chill(day)
    const dates = (oldestDays = 14) => jars(oldestDays).map(({ chilledOn }) => chilledOn.slice(-2))
    expect(dates()).toEqual(['01', '03', '09'])
    room.fact('care', culture.id, at(2), { act: 'discard_reserve', forDate: '2026-03-03' })
    expect(dates()).toEqual(['01', '03', '09'])
    room.fact('care', culture.id, at(9, '12:00'), { act: 'discard_reserve', forDate: '2026-03-03' })
    expect(dates()).toEqual(['01', '09'])
    // On the eighth what was a week old by then: the first of March, and not what came later.
    room.fact('care', culture.id, at(8, '12:00'), { act: 'discard_reserve' })
    expect(dates(7)).toEqual(['09'])
    expect(dates(10)).toEqual(['01', '09'])
  })
})
