import { describe, expect, test } from 'vitest'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { rotiferBrush } from './rotifer-brush.ts'

const brushes = (room: SnapshotBuilder, date: string) => room.drafts(date, [rotiferBrush])

describe('brushing the walls', () => {
  test('is daily from the day after the start, one tap, and not asked twice', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-09T08:00:00.000Z' })
    expect(brushes(room, '2026-03-09').drafts).toEqual([])
    const draft = onlyDraft(brushes(room, '2026-03-10'))
    expect(draft.content.fields).toEqual([])
    const facts = signOff(rotiferBrush, draft).facts
    expect(facts).toEqual([{ kind: 'care', subjectId: culture.id, data: { act: 'brush_walls' } }])
    room.append(facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    expect(brushes(room, '2026-03-10').drafts).toEqual([])
    expect(brushes(room, '2026-03-11').drafts).toHaveLength(1)
  })

  test('can be made rarer, and is not for microalgae', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    room.culture({ startedAt: '2026-03-01T08:00:00.000Z', kind: 'microalgae', strain: null })
    room.setting('rotifer-brush', { parameters: { everyDays: 3 } })
    room.fact('care', culture.id, '2026-03-09T08:00:00.000Z', { act: 'brush_walls' })
    expect(brushes(room, '2026-03-11').drafts).toEqual([])
    expect(onlyDraft(brushes(room, '2026-03-12')).subjectId).toBe(culture.id)
  })

  test('goes with the first feed where there is one, and is asked alone once that was given without its task', () => {
    const room = new SnapshotBuilder()
    const bottle = room.concentrate()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    expect(brushes(room, '2026-03-10').drafts).toHaveLength(1)
    room.count(culture, '2026-03-09T07:00:00.000Z', [200, 200, 200])
    expect(brushes(room, '2026-03-10').drafts).toEqual([])
    room.fact('feeding', culture.id, '2026-03-10T07:05:00.000Z', { food: 'concentrate', concentrateId: bottle.id })
    expect(brushes(room, '2026-03-10').drafts).toHaveLength(1)
    room.setting('rotifer-feed', { isOn: false })
    expect(brushes(room, '2026-03-11').drafts).toHaveLength(1)
  })
})
