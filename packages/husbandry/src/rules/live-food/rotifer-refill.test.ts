import { describe, expect, test } from 'vitest'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { rotiferRefill } from './rotifer-refill.ts'

const date = '2026-03-10'
const refills = (room: SnapshotBuilder, on = date) => room.drafts(on, [rotiferRefill])

describe('refilling rotifers', () => {
  test('waits for today’s harvest, which is filled up in the same standing', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date })
    expect(refills(room)).toEqual({ drafts: [], gaps: [] })
  })

  test('puts back what is missing, at the culture’s own salinity and warmth', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date, salinity: 22, temperatureC: 26 })
    const parts = [{ to: 'drain' as const, volumeL: 3.6 }]
    room.fact('harvest', culture.id, '2026-03-10T07:10:00.000Z', { volumeL: 3.6, parts })
    const draft = onlyDraft(refills(room))
    expect(draft.content.amount).toEqual({ value: 3.6, unit: 'L' })
    expect(draft.content.steps[0]?.quantities).toMatchObject({ salinity: { value: 22 }, temperature: { value: 26 } })
    expect(signOff(rotiferRefill, draft, { salinity: 22.5 }).facts).toEqual([
      { kind: 'water_change', subjectId: culture.id, data: { removedL: 0, addedL: 3.6, salinity: 22.5 } },
    ])
  })

  test('follows what was really taken, and ends when it is put back', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date })
    room.fact('harvest', culture.id, '2026-03-10T07:10:00.000Z', {
      volumeL: 4.5,
      parts: [{ to: 'drain', volumeL: 4.5 }],
    })
    expect(onlyDraft(refills(room)).content.amount?.value).toBe(4.5)
    room.fact('water_change', culture.id, '2026-03-10T07:30:00.000Z', { removedL: 0, addedL: 4 })
    const half = onlyDraft(refills(room)).content
    expect(half.amount?.value).toBe(0.5)
    expect(half.because.slice(0, 3)).toMatchObject([
      { label: 'taken out', quantity: { value: 4.5, unit: 'L' }, joins: null },
      { label: 'put back', quantity: { value: 4, unit: 'L' }, joins: 'minus' },
      { label: 'still missing', quantity: { value: 0.5, unit: 'L' }, joins: 'equals' },
    ])
    room.fact('water_change', culture.id, '2026-03-10T07:40:00.000Z', { removedL: 0, addedL: 0.5 })
    expect(refills(room).drafts).toEqual([])
  })

  test('makes up yesterday evening’s missing water, never more than the vessel holds', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-02-01T06:00:00.000Z', volumeL: 10 })
    room.fact('harvest', culture.id, '2026-03-09T18:40:00.000Z', { volumeL: 5, parts: [{ to: 'drain', volumeL: 5 }] })
    expect(onlyDraft(refills(room)).content.amount?.value).toBe(5)
    room.fact('harvest', culture.id, '2026-03-10T06:40:00.000Z', { volumeL: 9, parts: [{ to: 'drain', volumeL: 9 }] })
    expect(onlyDraft(refills(room)).content.amount?.value).toBe(10)
  })

  test('is not asked when nothing was taken', () => {
    const room = new SnapshotBuilder()
    room.culture({ startedAt: '2026-02-01T06:00:00.000Z' })
    expect(refills(room)).toEqual({ drafts: [], gaps: [] })
  })
})
