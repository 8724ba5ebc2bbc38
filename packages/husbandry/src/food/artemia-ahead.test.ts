import { describe, expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { artemiaAhead } from './artemia-ahead.ts'

const today = '2026-03-10'
const ahead = (built: SnapshotBuilder) => artemiaAhead(built.build(), { today, days: 4, futures: 1 })

/** One cone of 2 L at 28 C, and ocellaris in 20 L that take 20,000 nauplii in each of two feeds, at 07:00 and 12:30. */
function room() {
  const built = new SnapshotBuilder()
  const cone = built.culture({
    ...{ name: 'H1', kind: 'artemia_hatch', strain: null, volumeL: 2, temperatureC: 28, salinity: 30 },
    startedAt: '2026-02-01T08:00:00.000Z',
  })
  const batch = built.batch({ hatchedOn: '2026-03-01', tankId: built.tank({ volumeL: 20 }).id })
  const start = (at: string, data: { cystsG?: number; forDate?: string } = {}) =>
    built.fact('care', cone.id, at, { act: 'start_artemia', ...data })
  return { built, cone, batch, start }
}
const nothingAsked = (built: SnapshotBuilder) => built.setting('artemia-start', { isOn: false })
const fed = (built: SnapshotBuilder) =>
  ahead(built).days.map(({ batches }) => batches.map(({ wanted, got }) => [wanted, got].map(Math.round)))

describe('a hatch of Artemia', () => {
  test('that is under way feeds from its harvest on for a day, and what it cannot give is still to be hatched', () => {
    const { built, cone, batch, start } = room()
    nothingAsked(built)
    // 24 h at 28 C and a tenth longer for a slow lot: out at 08:24, harvested at 12:30. 0.2 g x 200,000, a tenth lost in sieving.
    start('2026-03-09T06:00:00.000Z', { cystsG: 0.2 })
    expect(ahead(built).hatches).toEqual([
      {
        ...{ id: expect.any(String), vessel: cone, standing: 'under_way', nauplii: expect.closeTo(36_000, 6) },
        ...{ readyAt: '2026-03-10T12:30:00.000Z', goodUntil: '2026-03-11T12:30:00.000Z' },
      },
    ])
    // The feed of this morning is before it; tomorrow morning has 16,000 left of it.
    expect(fed(built).map(([each]) => each)).toEqual([
      [40_000, 20_000],
      [40_000, 16_000],
      [40_000, 0],
      [40_000, 0],
    ])
    expect(ahead(built).days[1]!.gives).toEqual([
      { hatchId: ahead(built).hatches[0]!.id, batchId: batch.id, nauplii: expect.closeTo(16_000, 6) },
    ])
  })

  test('gives what this tin gave at its test, and of drained cysts by their dry weight', () => {
    const { built, cone, start } = room()
    start('2026-03-09T06:00:00.000Z', { cystsG: 0.24, forDate: '2026-03-10' })
    built.setting('artemia-start', { isOn: false, parameters: { cysts: 'drained_without_shells', wetPerDry: 2.4 } })
    const nauplii = () => Math.round(ahead(built).hatches[0]!.nauplii)
    expect(nauplii()).toBe(18_000)
    built.fact('care', cone.id, '2026-03-01T08:00:00.000Z', { act: 'test_cysts', naupliiPerGram: 250_000 })
    expect(nauplii()).toBe(22_500)
  })

  test('that is kept cold gives what was not fed before today, as long as nauplii last', () => {
    const { built, cone, batch, start } = room()
    nothingAsked(built)
    start('2026-03-08T06:00:00.000Z', { cystsG: 0.5 })
    const parts = [{ to: 'chilled_reserve', volumeL: 2 } as const]
    built.fact('harvest', cone.id, '2026-03-09T12:40:00.000Z', { volumeL: 2, parts })
    const given = { food: 'artemia' as const, animals: 20_000, fromCultureId: cone.id }
    built.fact('feeding', batch.id, '2026-03-09T12:45:00.000Z', given)
    // What is fed today does not move today's plan.
    built.fact('feeding', batch.id, '2026-03-10T07:10:00.000Z', given)
    expect(ahead(built).hatches).toMatchObject([
      { standing: 'kept', nauplii: expect.closeTo(70_000, 6), goodUntil: '2026-03-10T12:40:00.000Z' },
    ])
    expect(fed(built).map(([each]) => each![1])).toEqual([40_000, 0, 0, 0])
  })

  test('that the list asks for today is counted on before it is started', () => {
    const { built } = room()
    const asked = ahead(built).hatches.filter(({ standing }) => standing === 'asked')
    expect(asked.length).toBeGreaterThan(0)
    expect(new Set(asked.map(({ id }) => id)).size).toBe(asked.length)
    expect(ahead(built).gaps).toEqual([])
    for (const { nauplii, readyAt } of asked) {
      // What the feeds ask for and a fifth more.
      expect(nauplii).toBeCloseTo(48_000, 6)
      expect(readyAt > '2026-03-11').toBe(true)
    }
    expect(fed(built).some(([each]) => each![1]! > 0)).toBe(true)
  })

  test('feeds nobody who eats no Artemia, and two who do alike', () => {
    const { built, start } = room()
    nothingAsked(built)
    built.batch({ hatchedOn: '2026-03-08', tankId: built.tank({ volumeL: 20 }).id })
    const other = built.batch({ hatchedOn: '2026-03-01', tankId: built.tank({ volumeL: 10 }).id })
    start('2026-03-09T06:00:00.000Z', { cystsG: 0.1 })
    const { gives, batches } = ahead(built).days[0]!
    expect(batches.map(({ wanted, got }) => [wanted, Math.round(got)])).toEqual([
      [40_000, 12_000],
      [20_000, 6000],
    ])
    expect(gives.map(({ nauplii }) => Math.round(nauplii))).toEqual([12_000, 6000])
    expect(batches[1]!.batchId).toBe(other.id)
  })

  test('of which nobody wrote down the cysts is told of, and not counted on', () => {
    const { built, start } = room()
    start('2026-03-09T06:00:00.000Z', { forDate: '2026-03-10' })
    const { hatches, gaps } = ahead(built)
    expect(hatches.filter(({ standing }) => standing === 'under_way')).toEqual([])
    expect(gaps).toEqual([
      'H1: nobody wrote down how many grams of cysts went in, so its nauplii are not counted on. Strike that start out and write it down again with its grams.',
    ])
  })

  test('is enriched before it is food, and one that is overdue comes out this morning', () => {
    const { built, start } = room()
    nothingAsked(built)
    start('2026-03-08T06:00:00.000Z', { cystsG: 0.2 })
    expect(ahead(built).hatches).toMatchObject([{ readyAt: '2026-03-10T07:00:00.000Z' }])
    built.setting('artemia-start', { isOn: false, parameters: { enrichHours: 12 } })
    // Eight hours until they have a mouth, then twelve in the emulsion.
    expect(ahead(built).hatches).toMatchObject([
      { readyAt: '2026-03-11T03:00:00.000Z', goodUntil: '2026-03-12T03:00:00.000Z' },
    ])
  })

  test('that spoils first is fed first, whichever cone it stands in; of one that is all fed nothing is left', () => {
    const { built, cone, batch, start } = room()
    nothingAsked(built)
    const other = built.culture({ ...cone, id: built.nextId(), name: 'H2' })
    start('2026-03-09T18:00:00.000Z', { cystsG: 0.2 })
    built.fact('care', other.id, '2026-03-09T06:00:00.000Z', { act: 'start_artemia', cystsG: 0.2 })
    const names = () => ahead(built).hatches.map(({ vessel }) => vessel.name)
    expect(names()).toEqual(['H2', 'H1'])
    const last = built.culture({ ...cone, id: built.nextId(), name: 'H3' })
    built.fact('care', last.id, '2026-03-09T19:00:00.000Z', { act: 'start_artemia', cystsG: 0.2 })
    expect(names()[0]).toBe('H2')
    expect(new Set(ahead(built).hatches.map(({ id }) => id)).size).toBe(3)
    built.snapshot.cultures.pop()
    const parts = [{ to: 'chilled_reserve', volumeL: 2 } as const]
    built.fact('harvest', other.id, '2026-03-09T22:00:00.000Z', { volumeL: 2, parts })
    const fed = { food: 'artemia' as const, animals: 36_000, fromCultureId: other.id }
    built.fact('feeding', batch.id, '2026-03-09T22:10:00.000Z', fed)
    expect(names()).toEqual(['H1'])
  })
})
