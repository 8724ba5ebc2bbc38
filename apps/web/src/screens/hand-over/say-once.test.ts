import { type HandOver, HandOverSchema, type Title } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { sayOnce } from './say-once.ts'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const today = '2026-11-25'
const culture = { id: id(1), kind: 'culture' as const, name: 'R1' }
const clutch = { id: id(2), kind: 'clutch' as const, name: 'C1' }

const handOverOf = (part: Partial<HandOver>): HandOver =>
  HandOverSchema.parse({
    ...{ lastLookedAt: null, sinceRevision: 0, revision: 1, since: [], notDone: [], worries: [], notes: [] },
    ...{ signs: [], losses: [], coming: [] },
    ...part,
  })
const seen = (n: number, at: string, signs = ['ciliates']) => ({
  ...{ factId: id(n), at, byName: 'Ana', subject: culture, signs, note: null },
})
const titleOf = (deed: Title['deed']): Title => ({ deed, amount: null, thing: null, from: null, to: [], details: [] })
const late = (n: number, deed: Title['deed']) => ({
  ...{ taskId: id(n), title: titleOf(deed), subject: culture, state: 'open' as const, isLate: true },
  ...{ dueAt: '2026-11-25T07:00:00Z', reason: null, byName: null },
})
const worry = (n: number, settledAt: string | null = null) => ({
  ...{ id: id(n), at: '2026-11-25T06:00:00Z', byName: 'Ana', text: 'Loud pump', isWorry: true, subject: null },
  ...{ settledAt, settledByName: settledAt && 'Ben' },
})

describe('a hand-over that says each thing once', () => {
  it('gathers the same signs, with the late task they led to, under the one thing to watch', () => {
    const once = sayOnce(
      handOverOf({
        signs: [seen(10, '2026-11-24T18:00:00Z'), seen(11, '2026-11-25T07:00:00Z')],
        notDone: [late(20, 'see_to'), late(21, 'brush')],
      }),
      today,
    )
    expect(once.watch).toMatchObject({ kind: 'sign', of: { text: 'ciliates', task: { taskId: id(20) } } })
    expect(once.watch?.kind === 'sign' && once.watch.of.seen.map((one) => one.factId)).toEqual([id(11), id(10)])
    expect(once.troubles).toEqual([])
    expect(once.notDone.map((task) => task.taskId)).toEqual([id(21)])
  })

  it('keeps signs of another kind at the same vessel apart, and tells the late task with one of them', () => {
    const { watch, troubles } = sayOnce(
      handOverOf({
        signs: [seen(10, '2026-11-25T06:00:00Z', ['foam']), seen(11, '2026-11-25T07:00:00Z')],
        notDone: [late(20, 'see_to')],
      }),
      today,
    )
    expect(watch).toMatchObject({ of: { text: 'ciliates', task: { taskId: id(20) } } })
    expect(troubles).toMatchObject([{ text: 'foam', task: undefined }])
  })

  it('tells an open worry on top and not among the notes; a settled one only among the notes', () => {
    const once = sayOnce(
      handOverOf({ worries: [worry(3)], notes: [worry(3), worry(4, '2026-11-25T08:00:00Z')] }),
      today,
    )
    expect(once.watch).toMatchObject({ kind: 'worry', of: { id: id(3) } })
    expect(once.worries).toEqual([])
    expect(once.notes.map((note) => note.id)).toEqual([id(4)])
  })

  it('tells all nights of the clutch to watch together', () => {
    const coming = [
      { subject: clutch, care: 'nest' as const, date: today, probability: 0.6 },
      { subject: clutch, care: 'nest' as const, date: '2026-11-26', probability: 0.3 },
    ]
    const once = sayOnce(handOverOf({ coming }), today)
    expect(once.watch).toMatchObject({ kind: 'hatch', others: [{ date: '2026-11-26' }] })
    expect(once.coming).toEqual([])
  })
})
