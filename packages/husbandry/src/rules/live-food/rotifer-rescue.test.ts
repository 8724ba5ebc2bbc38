import { describe, expect, test } from 'vitest'
import { onlyDraft, SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { rotiferRescue } from './rotifer-rescue.ts'

const date = '2026-03-10'
const startedAt = '2026-02-20T08:00:00.000Z'

/** A culture that stood at 300 per mL two days ago, counted again this morning, beside a backup. */
const crashedRoom = (backupPerMl: number) => roomOf({ leftPerMl: 5, backupPerMl })

function roomOf({ leftPerMl, backupPerMl }: { leftPerMl: number; backupPerMl: number }) {
  const room = new SnapshotBuilder()
  const culture = room.culture({ name: 'R1', startedAt })
  const backup = room.culture({ name: 'R2', startedAt, isBackup: true })
  room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
  room.count(culture, '2026-03-10T06:30:00.000Z', [leftPerMl, leftPerMl, leftPerMl])
  room.count(backup, '2026-03-10T06:30:00.000Z', [backupPerMl, backupPerMl, backupPerMl])
  return room
}

const roomWith = (given: Parameters<typeof roomOf>[0]) => roomOf(given).drafts(date, [rotiferRescue]).drafts

describe('the rescue of a crashed culture', () => {
  // A tenth of what it was: common practice.
  test('begins under a tenth of the densest count, not at a thinner third', () => {
    expect(roomWith({ leftPerMl: 29, backupPerMl: 200 })).toHaveLength(1)
    expect(roomWith({ leftPerMl: 31, backupPerMl: 200 })).toEqual([])
    expect(roomWith({ leftPerMl: 100, backupPerMl: 200 })).toEqual([])
  })

  test('begins under a half, where there is something to begin with, once it looks sick for a second day', () => {
    const asked = ({
      leftPerMl,
      seen,
      backupPerMl = 200,
    }: {
      leftPerMl: number
      seen: string[]
      backupPerMl?: number
    }) => {
      const room = new SnapshotBuilder()
      const culture = room.culture({ name: 'R1', startedAt })
      const backup = room.culture({ name: 'R2', startedAt, isBackup: true })
      room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
      room.count(backup, '2026-03-10T06:30:00.000Z', [backupPerMl, backupPerMl, backupPerMl])
      for (const at of seen) room.fact('observation', culture.id, at, { signs: ['swimming_slow', 'water_tinted'] })
      room.count(culture, '2026-03-10T06:30:00.000Z', [leftPerMl, leftPerMl, leftPerMl])
      return room.drafts(date, [rotiferRescue]).drafts
    }
    const both = ['2026-03-09T18:30:00.000Z', '2026-03-10T06:20:00.000Z']
    expect(asked({ leftPerMl: 140, seen: both })).toHaveLength(1)
    expect(asked({ leftPerMl: 160, seen: both })).toEqual([])
    expect(asked({ leftPerMl: 140, seen: both.slice(1) })).toEqual([])
    expect(asked({ leftPerMl: 140, seen: both.slice(0, 1) })).toEqual([])
    // Before yesterday’s first round is another matter: whoever came then saw nothing.
    expect(asked({ leftPerMl: 140, seen: ['2026-03-09T05:00:00.000Z', both[1]!] })).toEqual([])
    // Nursed on: nothing else could take its place. Under a tenth it is emptied in any case.
    expect(asked({ leftPerMl: 140, seen: both, backupPerMl: 20 })).toEqual([])
    expect(asked({ leftPerMl: 20, seen: both, backupPerMl: 20 })).toHaveLength(1)
  })

  // 50-150 per mL make an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361).
  test('takes from none that is itself thinner than an inoculum, whatever the floor of its harvests', () => {
    const given = (backupPerMl: number) => {
      const room = crashedRoom(backupPerMl)
      room.setting('rotifer-harvest', { parameters: { floorPerMl: 5 } })
      return onlyDraft(room.drafts(date, [rotiferRescue])).content.amount
    }
    expect(given(51)).not.toBeNull()
    expect(given(49)).toBeNull()
  })

  test('takes nothing that would come to less than ten a millilitre: that is left with the one it would be taken from', () => {
    const given = (backupPerMl: number) =>
      onlyDraft(crashedRoom(backupPerMl).drafts(date, [rotiferRescue])).content.amount
    // Above the floor of 50 per mL a culture that may hold no more than 60 has 10 to give, less a tenth lost in the sieve.
    expect(given(63)).toBeNull()
    expect(given(68)).toBeNull()
    expect(given(80)).not.toBeNull()
  })

  test('comes after larvae: what they ask for stays, and half where some may hatch; of the last sound culture half goes first', () => {
    const amount = (more: (room: SnapshotBuilder) => void) => {
      const room = crashedRoom(120)
      more(room)
      return onlyDraft(room.drafts(date, [rotiferRescue])).content.amount?.value ?? 0
    }
    const alone = amount(() => undefined)
    expect(alone).toBeGreaterThan(2)
    const pair = (room: SnapshotBuilder) => room.pair({ tankId: room.tank({ temperatureC: 26 }).id })
    const before = amount((room) => room.clutch(pair(room), { spawnedAt: '2026-03-08T12:00:00.000Z' }))
    expect(before).toBe(alone)
    const hatching = amount((room) => room.clutch(pair(room), { spawnedAt: '2026-03-02T12:00:00.000Z' }))
    expect(hatching).toBeLessThan(alone)
    expect(hatching).toBeGreaterThan(0)
    // 3,000 larvae in 300 L want 3 million rotifers; the backup's 18 L hold 2.2.
    const hungry = (room: SnapshotBuilder) => {
      const tankId = room.tank({ kind: 'larval', volumeL: 300 }).id
      const batch = room.batch({ hatchedOn: '2026-03-07', tankId, larvae: 3000 })
      room.feedLink(batch, room.snapshot.cultures.find(({ isBackup }) => isBackup)!)
    }
    // Half of 18 L a day, and half of that.
    expect(amount(hungry)).toBe(4.5)
    const third = (room: SnapshotBuilder) => {
      hungry(room)
      // Sound, and at its floor of 50 per mL: it has nothing to give.
      room.count(room.culture({ name: 'R3', startedAt }), '2026-03-10T06:30:00.000Z', [50, 50, 50])
    }
    expect(amount(third)).toBe(0)
  })
})
