import { expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { cultureSupply } from './culture-supply.ts'
import { keptForLarvaeL } from './kept-for-larvae.ts'

// Larvae eat within hours of hatching, and nobody can count them before: half is there for them. common practice
test('half of what a culture can give is kept where larvae may hatch tonight or tomorrow, and nothing where none will', () => {
  const share = (spawnedAt: string) => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-20T08:00:00.000Z' })
    room.count(culture, '2026-03-10T06:30:00.000Z', [200, 200, 200])
    // Ocellaris at 26 C hatch after a week or so.
    room.clutch(room.pair({ tankId: room.tank({ kind: 'broodstock', temperatureC: 26 }).id }), { spawnedAt })
    const snapshot = room.build()
    const day = husbandryDay({ room: snapshot.room, date: '2026-03-10' })
    const { leftL } = cultureSupply(snapshot, culture, day)
    expect(leftL).toBeGreaterThan(2)
    return keptForLarvaeL(snapshot, culture, day) / leftL
  }
  expect(share('2026-03-02T12:00:00.000Z')).toBeCloseTo(0.5, 9)
  expect(share('2026-03-08T12:00:00.000Z')).toBe(0)
})
