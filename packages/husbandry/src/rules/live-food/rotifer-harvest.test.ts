import { describe, expect, test } from 'vitest'
import { risingCulture } from '../../testing/rising-culture.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { rotiferHarvest } from './rotifer-harvest.ts'

const date = '2026-03-10'
const harvests = (room: SnapshotBuilder, on = date) => room.drafts(on, [rotiferHarvest])

describe('thinning rotifers', () => {
  test('thins a culture to where it gives most: 2.6 of 18 L from one that a fifth a day has kept at a third of what such vessels hold', () => {
    const room = new SnapshotBuilder()
    room.pair({ name: 'Pair 1' })
    const culture = steadyCulture(room, { date })
    const draft = onlyDraft(harvests(room))
    expect(draft.content.amount).toEqual({ value: 2.6, unit: 'L' })
    // About 50 µm keeps the eggs: ICAR e-course on rotifers (text of FAO Fish. Tech. Pap. 361).
    expect(draft.content.steps.flatMap(({ quantities }) => quantities.mesh?.value ?? [])).toEqual([50])
    expect(saidTitle(draft)).toMatch(/^[\d.,]+ \S+ out: other fish; new water in$/)
    expect(signOff(rotiferHarvest, draft).facts).toEqual([
      { kind: 'harvest', subjectId: culture.id, data: { volumeL: 2.6, parts: [{ to: 'other_fish', volumeL: 2.6 }] } },
      { kind: 'water_change', subjectId: culture.id, data: { removedL: 0, addedL: 2.6 } },
    ])
  })

  test('what waits to be filled up is not recorded; a room that switched refills off is not asked', () => {
    const room = new SnapshotBuilder()
    room.pair({ name: 'Pair 1' })
    const culture = steadyCulture(room, { date })
    const kinds = (values: Record<string, unknown>) =>
      signOff(rotiferHarvest, onlyDraft(harvests(room)), values).facts.map(({ kind }) => kind)
    expect(kinds({ filledL: 0 })).toEqual(['harvest'])
    expect(signOff(rotiferHarvest, onlyDraft(harvests(room)), { filledL: 2 }).facts[1]).toEqual({
      kind: 'water_change',
      subjectId: culture.id,
      data: { removedL: 0, addedL: 2 },
    })
    // A jug is as well worth writing down as a bucket: the next density rests on it.
    expect(kinds({ filledL: 0.5 })).toEqual(['harvest', 'water_change'])
    room.setting('rotifer-refill', { isOn: false })
    const draft = onlyDraft(harvests(room))
    expect(saidTitle(draft)).toMatch(/^[\d.,]+ \S+ out: other fish$/)
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['parts'])
    expect(kinds({})).toEqual(['harvest'])
  })

  test('a fifth is the most while its counts are few: 3.1 of 15.9 L, a little under a gallon of 4.2', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ volumeL: 15.9, startedAt: '2026-03-05T06:30:00.000Z' })
    for (const [day, density] of [
      ['08', 420],
      ['09', 520],
      ['10', 610],
    ] as const)
      room.count(culture, `2026-03-${day}T06:30:00.000Z`, [density, density, density])
    const { amount, because } = onlyDraft(harvests(room)).content
    expect(amount).toEqual({ value: 3.1, unit: 'L' })
    expect((amount?.value ?? 0) / 3.785411784).toBeGreaterThan(0.8)
    expect((amount?.value ?? 0) / 3.785411784).toBeLessThan(1)
    expect(because.map(({ label }) => label)).toContain('for today: the usual share, while its counts are few')
  })

  test('the first one comes after three days, at 150 per mL: not younger, not thinner', () => {
    const young = new SnapshotBuilder()
    const culture = young.culture({ startedAt: '2026-03-08T06:00:00.000Z' })
    young.fact('inoculation', culture.id, culture.startedAt, { densityPerMl: 120 })
    young.count(culture, '2026-03-10T06:30:00.000Z', [400, 410, 390])
    expect(harvests(young)).toEqual({ drafts: [], gaps: [] })
    const thin = new SnapshotBuilder()
    const slow = thin.culture({ startedAt: '2026-03-06T06:30:00.000Z' })
    thin.fact('inoculation', slow.id, slow.startedAt, { densityPerMl: 63 })
    for (const [day, density] of [
      ['08', 90],
      ['09', 110],
      ['10', 140],
    ] as const)
      thin.count(slow, `2026-03-${day}T06:30:00.000Z`, [density, density, density])
    expect(harvests(thin).drafts).toEqual([])
  })

  test('a young culture that rises is thinned by what it gives most over weeks', () => {
    const room = new SnapshotBuilder()
    risingCulture(room, { date, days: 5 })
    const { content } = onlyDraft(harvests(room))
    expect(content.amount?.value).toBeGreaterThan(0)
    expect(content.amount?.value).toBeLessThan(9)
    expect(content.because.map(({ label }) => label).join()).toContain('the density at which it gives most over weeks')
  })

  test('takes nothing from a falling culture, a backup that was thinned lately, or one without a fresh count', () => {
    const falling = new SnapshotBuilder()
    const culture = falling.culture({ startedAt: '2026-03-01T06:30:00.000Z' })
    ;[400, 380, 300, 230, 180, 160].forEach((density, index) => {
      falling.count(culture, `2026-03-${String(5 + index).padStart(2, '0')}T06:30:00.000Z`, [density, density, density])
    })
    expect(harvests(falling).drafts).toEqual([])
    // Thinned yesterday: a backup has its rest until the third day.
    const backup = new SnapshotBuilder()
    const rested = steadyCulture(backup, { date, isBackup: true })
    expect(harvests(backup)).toEqual({ drafts: [], gaps: [] })
    backup.count(rested, '2026-03-12T06:30:00.000Z', [330, 332, 328])
    expect(harvests(backup, '2026-03-11').drafts).toEqual([])
    expect(harvests(backup, '2026-03-12').drafts).toHaveLength(1)
    const old = new SnapshotBuilder()
    steadyCulture(old, { date: '2026-03-06' })
    expect(harvests(old).gaps[0]?.message).toBe('Count R1: its last count is too old to harvest by.')
  })

  test('names the batch it feeds first and sends the rest where the room says', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date })
    const batch = room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ volumeL: 10 }).id })
    room.feedLink(batch, culture)
    room.setting('rotifer-harvest', { parameters: { restGoesTo: 'chilled_reserve' } })
    const [field] = onlyDraft(harvests(room)).content.fields
    if (field?.type !== 'parts') throw new Error('a field for the parts')
    expect(field.suggested.map(({ to, name }) => [to, name])).toEqual([
      ['larval_batch', 'Batch 1'],
      ['chilled_reserve', 'the chilled reserve'],
    ])
    expect(field.suggested.reduce((sum, part) => sum + part.volumeL, 0)).toBeCloseTo(2.6, 9)
  })

  test('what went out already today is not taken twice', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date })
    room.fact('harvest', culture.id, '2026-03-10T07:10:00.000Z', {
      volumeL: 1.8,
      parts: [{ to: 'drain', volumeL: 1.8 }],
    })
    expect(onlyDraft(harvests(room)).content.amount?.value).toBe(0.8)
    room.fact('harvest', culture.id, '2026-03-10T07:20:00.000Z', {
      volumeL: 0.8,
      parts: [{ to: 'drain', volumeL: 0.8 }],
    })
    expect(harvests(room).drafts).toEqual([])
  })

  test('what was counted at the instant of the harvest was counted before it: the day stays as it was', () => {
    const after = (at: string) => {
      const room = new SnapshotBuilder()
      const culture = steadyCulture(room, { date: '2026-03-09' })
      // Less than the night was thought to bring, and no more taken than the morning's count allows.
      room.count(culture, '2026-03-10T06:30:00.000Z', [165, 168, 162])
      const planned = onlyDraft(harvests(room)).content.amount!.value
      room.fact('harvest', culture.id, at, { volumeL: planned, parts: [{ to: 'drain', volumeL: planned }] })
      return harvests(room).drafts.map(({ content }) => content.amount)
    }
    expect(after('2026-03-10T07:00:00.000Z')).toEqual([])
    expect(after('2026-03-10T06:30:00.000Z')).toEqual([])
  })

  test('what is left of the day’s litres is asked for when it is more than the error of a jug: a tenth', () => {
    const asked = (takenL: number) => {
      const room = new SnapshotBuilder()
      const culture = steadyCulture(room, { date })
      const parts = [{ to: 'drain' as const, volumeL: takenL }]
      room.fact('harvest', culture.id, '2026-03-10T07:10:00.000Z', { volumeL: takenL, parts })
      return harvests(room).drafts.length
    }
    // Of 2.6 L: 0.3 and 0.2.
    expect(asked(2.3)).toBe(1)
    expect(asked(2.4)).toBe(0)
  })

  test('starts a child culture: the animals that arrive are written down with it', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date })
    const child = room.culture({ startedAt: '2026-03-10T06:00:00.000Z', parentCultureId: culture.id, name: 'R2' })
    const draft = room.drafts(date, [rotiferHarvest]).drafts.find(({ subjectId }) => subjectId === culture.id)
    if (!draft) throw new Error('a harvest of the parent')
    const counted = 220 + ((21 * 37) % 39)
    const [harvest, inoculation] = signOff(rotiferHarvest, draft).facts
    expect(harvest).toMatchObject({
      kind: 'harvest',
      data: { parts: [{ to: 'culture', subjectId: child.id, volumeL: 2.6 }] },
    })
    // The last count x 2,600 mL, a tenth lost in the sieve.
    expect(inoculation).toEqual({
      kind: 'inoculation',
      subjectId: child.id,
      data: { animals: Math.round(counted * 2600 * 0.9), fromCultureId: culture.id },
    })
  })

  test('water at another salinity is reached by three equal additions, with their volumes', () => {
    const room = new SnapshotBuilder()
    const culture = steadyCulture(room, { date, salinity: 20 })
    room.feedLink(room.batch({ hatchedOn: '2026-03-07', tankId: room.tank({ salinity: 32 }).id }), culture)
    const { steps } = onlyDraft(harvests(room)).content
    const start = steps.find(({ quantities }) => quantities.start)
    const added = steps.find(({ text }) => text.includes('three times'))
    expect(start?.quantities.start?.value).toBeGreaterThan(0)
    // 12 apart: as much again three times leaves a quarter of it, 3, which is no shock.
    expect(added?.quantities.each).toEqual(start?.quantities.start)
  })
})
