import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { draftDay } from '../engine/draft-day.ts'
import { nextSnapshot, openSnapshot } from '../snapshot/live-snapshot.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { randomRoom } from '../testing/random-room.ts'
import type { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { rules } from './index.ts'

const date = '2026-03-10'
const bounded = { numRuns: 25 } as const
const day = (snapshot: RoomSnapshot, on = date) => draftDay({ snapshot, date: on, rules })

type Write = (room: SnapshotBuilder, which: number) => void
const at = (minute: number) =>
  `${date}T${String(minute % 24).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00.000Z`
const some = <T>(list: readonly T[], which: number): T | undefined => list[which % Math.max(1, list.length)]

/** What people do to a room: they count, feed and harvest, strike out, change a thing, and set a rule. */
const writes: Write[] = [
  (room, which) => {
    const culture = some(room.snapshot.cultures, which)
    if (culture) room.count(culture, at(which), [100 + (which % 200)])
  },
  (room, which) => {
    const culture = some(room.snapshot.cultures, which)
    const batch = some(room.snapshot.batches, which)
    if (culture && batch)
      room.fact('harvest', culture.id, at(which), {
        volumeL: culture.volumeL / 10,
        parts: [{ to: 'larval_batch', subjectId: batch.id, volumeL: culture.volumeL / 10 }],
      })
  },
  (room, which) => {
    const tank = some(room.snapshot.tanks, which)
    if (tank) room.fact('water_test', tank.id, at(which), { temperatureC: 24 + (which % 5) })
  },
  (room, which) => {
    const batch = some(room.snapshot.batches, which)
    if (batch) room.fact('loss', batch.id, at(which), { of: 'larvae', number: 1 + (which % 5) })
  },
  (room, which) => {
    const clutch = some(room.snapshot.clutches, which)
    if (clutch)
      room.fact('hatch', clutch.id, at(which), { hatchedOn: date, batchId: some(room.snapshot.batches, which)?.id })
  },
  (room, which) => {
    const struck = some(room.snapshot.facts, which)
    room.snapshot.facts = room.snapshot.facts.filter((fact) => fact !== struck)
  },
  (room, which) => {
    const tank = some(room.snapshot.tanks, which)
    if (tank) tank.temperatureC = 22 + (which % 7)
  },
  (room, which) => {
    const culture = some(room.snapshot.cultures, which)
    if (culture) culture.isBackup = !culture.isBackup
  },
  (room, which) => {
    const rule = some(rules, which)!
    room.setting(rule.id, { isOn: which % 3 !== 0 })
  },
  (room, which) => {
    const pair = some(room.snapshot.pairs, which)
    if (pair) room.clutch(pair, { spawnedAt: at(which), eggs: 200 })
  },
]
const write = fc.tuple(fc.nat(writes.length - 1), fc.nat(10_000))

describe('a live snapshot', () => {
  test('gives, after any writes, the day that a new one gives', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.array(write, { minLength: 1, maxLength: 5 }),
        (seed, done) => {
          const room = randomRoom(seed, date)
          let live = openSnapshot(room.build())
          day(live)
          for (const [kind, which] of done) {
            writes[kind]!(room, which)
            live = nextSnapshot(live, room.build())
            expect(day(live)).toEqual(day(room.build()))
            expect(day(live, '2026-03-11')).toEqual(day(room.build(), '2026-03-11'))
          }
        },
      ),
      bounded,
    )
  })

  test('of a write that was taken back leaves nothing behind', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), write, (seed, [kind, which]) => {
        const before = randomRoom(seed, date)
        const after = randomRoom(seed, date)
        writes[kind]!(after, which)
        const live = openSnapshot(before.build())
        day(live)
        day(nextSnapshot(live, after.build()))
        expect(day(live)).toEqual(day(before.build()))
        expect(day(nextSnapshot(live, before.build()))).toEqual(day(before.build()))
      }),
      bounded,
    )
  })

  test('reads as the snapshot that it was opened from', () => {
    const given = randomRoom(7, date).build()
    expect({ ...openSnapshot(given) }).toEqual(given)
    expect(JSON.stringify(openSnapshot(given))).toBe(JSON.stringify({ ...openSnapshot(given) }))
  })

  test('works out again only what a write concerns', () => {
    const room = randomRoom(11, date)
    for (let i = 0; i < 3; i += 1) room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
    const live = openSnapshot(room.build())
    const before = day(live)
    room.fact('water_test', room.tank().id, at(60), { temperatureC: 25 })
    const next = nextSnapshot(live, room.build())
    const after = day(next)
    const kept = after.drafts.filter((draft) => before.drafts.includes(draft))
    expect(kept.length).toBeGreaterThan(0)
    // Nothing was written since: every answer holds.
    expect(day(nextSnapshot(next, room.build())).drafts.every((draft, index) => draft === after.drafts[index])).toBe(
      true,
    )
  })
})
