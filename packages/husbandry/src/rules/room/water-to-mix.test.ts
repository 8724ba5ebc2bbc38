import { saltToMixG } from '@fryward/seawater'
import { describe, expect, test } from 'vitest'
import type { TaskDraft } from '../../engine/draft-day.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { roomWaterToMix } from './water-to-mix.ts'

const date = '2026-03-10'
const saltOf = ({ content }: TaskDraft) =>
  'deed' in content.title ? content.title.details.find((detail) => detail.kind === 'amount')?.quantity : undefined
const mixes = (room: SnapshotBuilder) => room.drafts(date, [roomWaterToMix])

describe('water to mix by tonight', () => {
  test('is tomorrow’s refills and a tenth more, with the salt for each salinity', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date, salinity: 25, temperatureC: 25 })
    const draft = onlyDraft(mixes(room))
    expect(draft.roundId).toBe('evening')
    // 4.2 L x 1.1, and 25/35 of 35.165 g in each kilogram of water of density 1.0157.
    expect(draft.content.amount).toEqual({ value: 4.6, unit: 'L' })
    expect(saltOf(draft)).toEqual({ value: 118, unit: 'g' })
    expect(saltToMixG({ volumeL: 4.6, salinity: 25, temperatureC: 25 })).toBeCloseTo(4.6 * 1.0157 * 25.118, 0)
    const facts = signOff(roomWaterToMix, draft).facts
    expect(facts).toEqual([
      { kind: 'care', subjectId: room.snapshot.room.id, data: { act: 'mix_water', litres: 4.6, saltG: 118 } },
    ])
    room.append(facts[0]!, { at: '2026-03-10T18:40:00.000Z' })
    expect(mixes(room).drafts).toEqual([])
  })

  test('vessels of two salinities are two mixes in one task', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date, salinity: 20, name: 'R1' })
    steadyCulture(room, { date, salinity: 30, name: 'R2' })
    const steps = onlyDraft(mixes(room)).content.steps
    expect(steps.slice(0, 2).map(({ quantities }) => quantities.salinity?.value)).toEqual([20, 30])
  })

  test('a bag that holds bound water is weighed heavier', () => {
    const room = new SnapshotBuilder()
    steadyCulture(room, { date, salinity: 25, temperatureC: 25 })
    room.setting('room-water-to-mix', { parameters: { dryShare: 0.8 } })
    expect(saltOf(onlyDraft(mixes(room)))?.value).toBe(147)
  })

  test('counts a hatch tank to fill, a vessel to begin again in, and the cones', () => {
    const purposes = (room: SnapshotBuilder, on = date) =>
      room
        .drafts(on, [roomWaterToMix])
        .drafts.flatMap(({ content }) => content.because.map(({ label, quantity }) => [label, quantity?.value]))
    const room = new SnapshotBuilder()
    room.tank({ name: 'Nursery', volumeL: 40 })
    // Ocellaris at 27 C: likeliest in the night of the 12th or 13th (148 h at 27 C: Yasir & Qin 2007).
    room.clutch(room.pair(), { spawnedAt: '2026-03-06T12:00:00.000Z', eggs: 300 })
    const days = ['2026-03-08', '2026-03-09', '2026-03-10', '2026-03-11']
    expect(
      days.flatMap((on) => purposes(room, on).filter(([label]) => label === 'Nursery, filled for the larvae')),
    ).toEqual([['Nursery, filled for the larvae', 40]])
    // A second clutch of those nights has its own tank, and one of which nobody knows the kind is no hindrance.
    room.tank({ name: 'Nursery 2', volumeL: 25 })
    room.clutch(room.pair(), { spawnedAt: '2026-03-06T12:30:00.000Z', eggs: 300 })
    room.clutch(room.pair({ species: 'gadus-morhua' }), { spawnedAt: '2026-03-06T12:00:00.000Z' })
    const filled = days.flatMap((on) =>
      purposes(room, on).filter(([label]) => String(label).includes('for the larvae')),
    )
    expect(filled).toEqual([
      ['Nursery, filled for the larvae', 40],
      ['Nursery 2, filled for the larvae', 25],
    ])
    const cultures = new SnapshotBuilder()
    cultures.culture({ name: 'R1', startedAt: '2026-01-01T08:00:00.000Z', volumeL: 18 })
    cultures.setting('rotifer-restart', { parameters: { everyDays: 69 } })
    expect(purposes(cultures)).toContainEqual(['R1, a clean vessel filled for the restart', 18])
    const hatch = { kind: 'artemia_hatch', strain: null, volumeL: 2, temperatureC: 28 } as const
    cultures.culture({ name: 'H1', ...hatch, startedAt: '2026-03-01T08:00:00.000Z' })
    cultures.batch({ hatchedOn: '2026-03-07' })
    // First eaten on the 13th: begun on the evening of the 11th.
    expect(purposes(cultures)).toContainEqual(['H1, water for the cysts', 2])
  })

  test('is not asked when tomorrow uses none', () => {
    expect(mixes(new SnapshotBuilder())).toEqual({ drafts: [], gaps: [] })
  })
})
