import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { litRoom, ownLightHours, tankLight } from './tank-light.ts'

/** A room lit from 07:20 to 19:50 that gives larvae sixteen hours. */
function lit(given: { kind?: 'larval' | 'broodstock'; lightHours: number | null } | null) {
  const room = new SnapshotBuilder({ lightsOnAt: '07:20', lightsOffAt: '19:50' })
  room.setting('larval-light', { parameters: { hours: 16 } })
  const tank = given ? room.tank(given) : undefined
  return { snapshot: room.build(), tank }
}
const lightOf = (...given: Parameters<typeof lit>) => {
  const { snapshot, tank } = lit(...given)
  const { hours, onAt, offAt } = tankLight(snapshot, tank)
  return [hours, onAt, offAt]
}

test('a tank is lit as the room is, for hours of its own, or as larvae are', () => {
  expect(lightOf(null)).toEqual([12.5, '07:20', '19:50'])
  expect(lightOf({ kind: 'broodstock', lightHours: null })).toEqual([12.5, '07:20', '19:50'])
  expect(lightOf({ kind: 'broodstock', lightHours: 10.25 })).toEqual([10.25, '07:20', '17:35'])
  expect(lightOf({ kind: 'larval', lightHours: null })).toEqual([16, '07:20', '23:20'])
  expect(lightOf({ kind: 'larval', lightHours: 12 })).toEqual([12, '07:20', '19:20'])
})

test('lamps may burn over midnight, and all day', () => {
  expect(lightOf({ lightHours: 18 })).toEqual([18, '07:20', '01:20'])
  expect(lightOf({ lightHours: 24 })).toEqual([24, '07:20', '07:20'])
})

test('of the same hours the room is the same, which its days are remembered by', () => {
  const { snapshot, tank } = lit({ lightHours: 18 })
  expect(litRoom(snapshot, tank)).toBe(litRoom(snapshot, tank))
  expect(litRoom(snapshot, undefined)).toBe(snapshot.room)
  expect(ownLightHours(snapshot, tank!)).toBe(18)
})
