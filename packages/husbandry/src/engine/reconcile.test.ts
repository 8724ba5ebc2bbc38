import type { TaskState } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { rotiferFeed } from '../rules/live-food/rotifer-feed.ts'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import type { TaskDraft } from './draft-day.ts'
import { isSame, type KeptTask, type PrintedDraft, reconcile } from './reconcile.ts'

const date = '2026-03-10'

function fedRoom() {
  const room = new SnapshotBuilder()
  room.concentrate()
  const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
  room.count(culture, '2026-03-10T06:30:00.000Z', [260, 260])
  return { room, culture, drafts: printed(room.drafts(date, [rotiferFeed]).drafts) }
}
const printed = (drafts: TaskDraft[]): PrintedDraft[] =>
  drafts.map((draft) => ({ ...draft, fingerprint: JSON.stringify(draft) }))
const keep = ({ key, fingerprint, content }: PrintedDraft, state: TaskState): KeptTask => ({
  id: `task of ${key}`,
  key,
  state,
  fingerprint,
  amount: content.amount,
})

describe('working a day out again', () => {
  test('opens what is new and leaves what is the same', () => {
    const { drafts } = fedRoom()
    const [first, second] = drafts
    expect(reconcile({ kept: [keep(first!, 'open')], drafts })).toEqual({
      create: [second],
      update: [],
      withdraw: [],
      reopen: [],
    })
  })

  test('a new count gives open tasks a new amount and leaves signed-off, skipped and missed ones alone', () => {
    const { room, culture, drafts } = fedRoom()
    room.count(culture, '2026-03-10T12:00:00.000Z', [400, 400])
    const again = printed(room.drafts(date, [rotiferFeed]).drafts)
    const kept = [keep(drafts[0]!, 'done'), keep(drafts[1]!, 'open')]
    const result = reconcile({ kept, drafts: again })
    expect(result.update.map(({ task, isAmountChanged }) => [task.key, isAmountChanged])).toEqual([
      [drafts[1]?.key, true],
    ])
    for (const state of ['done', 'skipped', 'missed'] as const) {
      const untouched = reconcile({
        kept: again.map((draft) => ({ ...keep(drafts[0]!, state), key: draft.key })),
        drafts: again,
      })
      expect(untouched, state).toEqual({ create: [], update: [], withdraw: [], reopen: [] })
    }
  })

  test('a change that leaves the amount is an update that says so', () => {
    const { drafts } = fedRoom()
    const kept = keep(drafts[0]!, 'open')
    const [changed] = printed([{ ...drafts[0]!, content: { ...drafts[0]!.content, cautions: ['Mind the step.'] } }])
    expect(reconcile({ kept: [kept], drafts: [changed!] }).update).toMatchObject([{ isAmountChanged: false }])
  })

  test('what is no longer wanted is withdrawn, and comes back when it is wanted again', () => {
    const { drafts } = fedRoom()
    const [first] = drafts
    expect(reconcile({ kept: [keep(first!, 'open')], drafts: [] }).withdraw.map(({ key }) => key)).toEqual([first?.key])
    expect(reconcile({ kept: [keep(first!, 'done')], drafts: [] }).withdraw).toEqual([])
    expect(reconcile({ kept: [keep(first!, 'withdrawn')], drafts: [first!] }).reopen).toHaveLength(1)
  })

  test('the order in which a database keeps keys is no change', () => {
    expect(isSame({ a: 1, b: { c: [1, 2], d: null } }, { b: { d: null, c: [1, 2] }, a: 1 })).toBe(true)
    expect(isSame({ a: [1, 2] }, { a: [2, 1] })).toBe(false)
  })
})
