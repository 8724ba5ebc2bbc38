import { describe, expect, test } from 'vitest'
import { electricityCautions } from '../../task/cautions.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { roomWaterToMix } from './water-to-mix.ts'

const date = '2026-03-10'
const [stir, warm] = [/^Salt into purified water/, /^Let it stir/]

/** Tanks of pairs at 26 °C, of so many litres and so salty, whose tenth is changed tomorrow. */
function tanks(...given: [name: string, volumeL: number, salinity: number][]) {
  const room = new SnapshotBuilder()
  for (const [name, volumeL, salinity] of given) {
    const about = { kind: 'broodstock', temperatureC: 26, hasFilter: true } as const
    const { id } = room.tank({ ...about, name, volumeL, salinity })
    room.pair({ tankId: id })
    room.fact('water_change', id, '2026-03-04T12:30:00.000Z', { removedL: 1, addedL: 1 })
  }
  return { room, draft: onlyDraft(room.drafts(date, [roomWaterToMix])) }
}

describe('water that is mixed the evening before', () => {
  test('is one mix for all of a salinity, a tenth more, with its salt; and says for whom and why', () => {
    const { draft } = tanks(['B', 100, 35], ['A', 60, 35])
    expect([draft.roundId, draft.content.amountOf, draft.content.cautions]).toEqual([
      ...['evening', 'new water', electricityCautions],
    ])
    // 16 L of sea water of density 1.0230, 35.165 g in each kilogram, and a tenth more: 17.6 L and 633 g.
    expect(17.6 * 1.023 * 35.165).toBeCloseTo(633, 0)
    expect(saidTitle(draft)).toBe('17.6 L new water for tomorrow, 633 g salt')
    expect(saidSteps(draft)).toEqual([
      '17.6 L at 35 psu: 633 g salt. For A, B.',
      ...[expect.stringMatching(stir), expect.stringMatching(warm)],
    ])
    expect(whyLines(draft)).toEqual([
      ...['6 L A, water change', 'plus 10 L B, water change', expect.stringMatching(/^and 0\.1 share spare$/)],
      ...['equals 17.6 L to mix', 'and 35 psu salinity of A, B', 'and 1 share dry salt in a gram of the mix'],
      'equals 633 g salt',
    ])
    expect(draft.content.fields).toMatchObject([
      { name: 'litres', usual: 17.6, maximum: 1000 },
      { name: 'saltG', usual: 633, maximum: 50_000, likelyMinimum: 211, likelyMaximum: 1899, step: 1 },
    ])
    expect(signOff(roomWaterToMix, draft, { litres: 20, saltG: 700 }).facts[0]?.data).toEqual({
      ...{ act: 'mix_water', litres: 20, saltG: 700 },
    })
  })

  test('of salt that a scale shows in tenths is typed in tenths; a large room may mix as much as it needs', () => {
    // 2.2 L: 79.1 g.
    expect(tanks(['A', 20, 35]).draft.content.fields[1]).toMatchObject({ usual: 79.1, step: 0.1 })
    const { fields } = tanks(['A', 6000, 35]).draft.content
    // 660 L and 23.7 kg.
    expect(fields).toMatchObject([{ usual: 660, maximum: 1980 }, { usual: 23_744 }])
    expect(fields[1]?.type === 'number' && fields[1].maximum).toBe(3 * 23_744)
  })

  test('saltier than sea water’s density is known is left to the room’s own table, and no part of the salt is called all of it', () => {
    const { draft } = tanks(['A', 100, 35], ['Brine', 50, 44])
    expect(saidTitle(draft)).toBe('16.5 L new water for tomorrow')
    expect(saidSteps(draft).slice(0, 2)).toEqual([
      '11 L at 35 psu: 396 g salt. For A.',
      '5.5 L at 44 psu: outside what can be worked out; mix it by your own table.',
    ])
    expect(whyLines(draft).slice(-3)).toEqual([
      ...['and 35 psu salinity of A', 'and 44 psu salinity of Brine', 'and 1 share dry salt in a gram of the mix'],
    ])
    // 50 g a litre and less: 275 to 2,475 g.
    expect(draft.content.fields[1]).toMatchObject({ usual: null, likelyMinimum: 275, likelyMaximum: 2475 })
    const kept = (values: Record<string, unknown>) => signOff(roomWaterToMix, draft, values).facts[0]?.data
    expect(kept({})).toEqual({ act: 'mix_water', litres: 16.5 })
    expect(kept({ saltG: 660 })).toEqual({ act: 'mix_water', litres: 16.5, saltG: 660 })
    // At 42 it is still worked out.
    expect(saidTitle(tanks(['Brine', 50, 42]).draft)).toMatch(/^5\.5 L new water for tomorrow, 2\d\d g salt$/)
  })

  test('that was mixed today is not asked for again; what else was done today is another matter', () => {
    const { room, draft } = tanks(['A', 100, 35])
    room.fact('care', room.snapshot.room.id, `${date}T09:00:00.000Z`, { act: 'disinfect_tools' })
    room.fact('care', room.snapshot.room.id, '2026-03-09T23:59:00.000Z', { act: 'mix_water' })
    expect(room.drafts(date, [roomWaterToMix]).drafts).toHaveLength(1)
    room.append(signOff(roomWaterToMix, draft).facts[0]!, { at: `${date}T09:00:00.000Z` })
    expect(room.drafts(date, [roomWaterToMix]).drafts).toEqual([])
  })
})
