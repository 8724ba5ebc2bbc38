import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { rotiferRescue } from './rotifer-rescue.ts'

const date = '2026-03-10'
const startedAt = '2026-02-20T08:00:00.000Z'

/** A culture that stood at 300 per mL two days ago, counted again this morning, beside a backup. */
function roomWith({ leftPerMl, backupPerMl }: { leftPerMl: number; backupPerMl: number }) {
  const room = new SnapshotBuilder()
  const culture = room.culture({ name: 'R1', startedAt })
  const backup = room.culture({ name: 'R2', startedAt, isBackup: true })
  room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
  room.count(culture, '2026-03-10T06:30:00.000Z', [leftPerMl, leftPerMl, leftPerMl])
  room.count(backup, '2026-03-10T06:30:00.000Z', [backupPerMl, backupPerMl, backupPerMl])
  return room.drafts(date, [rotiferRescue]).drafts
}

describe('the rescue of a crashed culture', () => {
  // A tenth of what it was: common practice.
  test('begins under a tenth of the densest count, not at a thinner third', () => {
    expect(roomWith({ leftPerMl: 29, backupPerMl: 200 })).toHaveLength(1)
    expect(roomWith({ leftPerMl: 31, backupPerMl: 200 })).toEqual([])
    expect(roomWith({ leftPerMl: 100, backupPerMl: 200 })).toEqual([])
  })

  // 50-150 per mL make an inoculum: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361).
  test('takes from none that is itself thinner than an inoculum', () => {
    expect(roomWith({ leftPerMl: 5, backupPerMl: 51 })[0]?.content.amount).not.toBeNull()
    expect(roomWith({ leftPerMl: 5, backupPerMl: 49 })[0]?.content.amount).toBeNull()
  })
})
