import { expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { cultureSupply } from './culture-supply.ts'
import { larvalShare } from './larval-change-plan.ts'

const date = '2026-03-10'

/** What a culture of 10 L, counted this morning, may give in a day of at most two fifths and never under 50 per mL. */
function supplyOf(perMl: number | null, takenL: number[] = []) {
  const room = new SnapshotBuilder()
  room.setting('rotifer-harvest', { parameters: { mostShare: 0.4, floorPerMl: 50 } })
  const culture = room.culture({ startedAt: '2026-02-20T08:00:00.000Z', volumeL: 10 })
  if (perMl !== null) room.count(culture, `${date}T06:30:00.000Z`, [perMl, perMl, perMl])
  for (const [index, volumeL] of takenL.entries())
    room.fact('harvest', culture.id, `${date}T08:0${index}:00.000Z`, { volumeL, parts: [{ to: 'drain', volumeL }] })
  return cultureSupply(room.build(), culture, husbandryDay({ room: room.snapshot.room, date }))
}

test('a culture gives its most share where it is dense, and what is above its floor where it is thin', () => {
  // 200 per mL could go down to 50, by three quarters: two fifths of 10 L are 4 L.
  expect(supplyOf(200)).toEqual({ mostL: 4, takenL: 0, leftL: 4, boundedBy: 'share' })
  // 80 per mL down to 50 would be three eighths; one count alone is a sixth or so in doubt, and so much stays.
  const thin = supplyOf(80)
  expect(thin.boundedBy).toBe('floor')
  expect(thin.mostL).toBeLessThan(3)
  expect(thin.mostL).toBeGreaterThan(2)
  for (const perMl of [50, 30, 0, null])
    expect(supplyOf(perMl)).toMatchObject({ mostL: 0, leftL: 0, boundedBy: 'floor' })
})

test('what was taken today is held against the day’s own most, never below nothing', () => {
  expect(supplyOf(200, [1, 0.5])).toEqual({ mostL: 4, takenL: 1.5, leftL: 2.5, boundedBy: 'share' })
  expect(supplyOf(200, [5])).toMatchObject({ mostL: 4, takenL: 5, leftL: 0 })
})

test('one that was fed from and then begun again gives nothing more on that day: half of its animals went on in clean water', () => {
  const room = new SnapshotBuilder()
  room.setting('rotifer-harvest', { parameters: { mostShare: 0.5, floorPerMl: 50 } })
  const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z', volumeL: 17 })
  room.count(culture, `${date}T07:07:00.000Z`, [117, 117, 117])
  const parts = [{ to: 'drain' as const, volumeL: 2.7 }]
  room.fact('harvest', culture.id, `${date}T07:17:00.000Z`, { volumeL: 2.7, parts })
  const leftL = () => cultureSupply(room.build(), culture, husbandryDay({ room: room.snapshot.room, date })).leftL
  expect(leftL()).toBeGreaterThan(3)
  room.fact('care', culture.id, `${date}T12:36:00.000Z`, { act: 'restart_culture', litres: 17 })
  // 8.5 L at 117 per mL through a sieve that loses a tenth: 53 per mL in 17 L, as good as the floor.
  room.fact('inoculation', culture.id, `${date}T12:36:00.000Z`, { animals: Math.round(8500 * 117 * 0.9) })
  expect(leftL()).toBe(0)
})

test('of larval water a share goes from a day of life on, more each day, up to the most', () => {
  const room = new SnapshotBuilder()
  room.setting('larval-water-change', {
    parameters: { fromDay: 4, firstShare: 0.1, moreEachDay: 0.05, mostShare: 0.3 },
  })
  const shares = [3, 4, 5, 8, 9, 30].map((day) => Number(larvalShare(room.build(), day).toFixed(9)))
  expect(shares).toEqual([0, 0.1, 0.15, 0.3, 0.3, 0.3])
  room.setting('larval-water-change', { isOn: false })
  expect(larvalShare(room.build(), 8)).toBe(0)
})
