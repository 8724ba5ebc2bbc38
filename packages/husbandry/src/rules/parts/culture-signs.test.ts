import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { healthFrom, signFacts, signsField, waterField, waterLookOf } from './culture-signs.ts'
import { signsSince, troubleFacts, troubleFields } from './culture-trouble.ts'

const date = '2026-03-10'
const valuesOf = (field: { type: string }) => ('choices' in field ? (field.choices as { value: string }[]) : [])

describe('what is ticked of a culture', () => {
  test('the water from green to clear, the signs with what comes first in a crash at the top', () => {
    expect(valuesOf(waterField).map(({ value }) => value)).toEqual(['water_green', 'water_tinted', 'water_clear'])
    // Slow swimming shows within ten minutes of trouble: Snell, Childress, Boyer & Hoff 1987, J. World Aquac. Soc. 18:270-277.
    expect(valuesOf(signsField).map(({ value }) => value)).toEqual([
      ...['swimming_slow', 'sinking', 'clumping', 'foam', 'bad_smell', 'ciliates'],
    ])
    expect([waterField.isRequired, signsField.isRequired]).toEqual([false, false])
  })

  test('is one look: the water first, then each sign; nothing ticked is no look at all', () => {
    const seen = (signs: string[]) => [{ kind: 'observation', subjectId: 'R1', data: { signs } }]
    expect(signFacts('R1', {})).toEqual([])
    expect(signFacts('R1', { water: 'water_tinted' })).toEqual(seen(['water_tinted']))
    const six = ['swimming_slow', 'sinking', 'clumping', 'foam', 'bad_smell', 'ciliates']
    expect(signFacts('R1', { signs: six, water: 'water_clear' })).toEqual(seen(['water_clear', ...six]))
    expect(signFacts('R1', { water: 'blue', signs: ['purple'] })).toEqual([])
  })

  test('is trouble at once where they swim slowly, sink, clump or it smells; foam and ciliates are watched', () => {
    const room = new SnapshotBuilder()
    const look = (...signs: ('swimming_slow' | 'sinking' | 'clumping' | 'foam' | 'bad_smell' | 'ciliates')[]) => {
      const { id } = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
      return room.fact('observation', id, `${date}T07:00:00.000Z`, { signs }) as Parameters<
        typeof healthFrom
      >[0][number]
    }
    const grade = (...looks: Parameters<typeof healthFrom>[0]) => healthFrom(looks).grade
    const single = (['swimming_slow', 'sinking', 'clumping', 'bad_smell', 'foam', 'ciliates'] as const).map((sign) =>
      grade(look(sign)),
    )
    expect(single).toEqual(['act', 'act', 'act', 'act', 'watch', 'watch'])
    // Said twice it is one reason, and clumping is a kind of sinking.
    const both = healthFrom([look('sinking', 'foam'), look('clumping', 'foam')])
    expect(both.reasons.map(({ code }) => code).sort()).toEqual(['foam', 'sinking'])
    expect(healthFrom([], { oxygenMgL: 1.5 }).reasons).toMatchObject([{ code: 'oxygen-low', grade: 'act' }])
  })

  test('the water of a look is what was ticked of it, whatever else was', () => {
    const room = new SnapshotBuilder()
    const { id } = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    type Look = Parameters<typeof waterLookOf>[0]
    const look = (signs: Look['data']['signs']) =>
      waterLookOf(room.fact('observation', id, `${date}T07:00:00.000Z`, { signs }) as Look)
    expect([
      look(['foam', 'water_green']),
      look(['water_tinted']),
      look(['water_clear', 'foam']),
      look(['foam']),
    ]).toEqual(['green', 'tinted', 'clear', null])
  })
})

describe('signs of trouble', () => {
  test('count from so many hours before the first round on, and only since a look that found all well', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    const day = husbandryDay({ room: room.snapshot.room, date })
    const seen = (at: string, signs: ('foam' | 'sinking' | 'swimming_well' | 'all_well')[], note?: string) =>
      room.fact('observation', culture.id, at, { signs, ...(note ? { note } : {}) })
    const since = (hours = 24) => signsSince(room.build(), culture, { day, hours }).map(({ at }) => at.slice(8, 16))
    // The first round is at 07:00.
    seen('2026-03-09T06:59:00.000Z', ['foam'])
    seen('2026-03-09T07:00:00.000Z', ['foam'])
    seen('2026-03-09T20:00:00.000Z', [], 'Bubbles well.')
    seen('2026-03-10T09:00:00.000Z', ['sinking'])
    seen('2026-03-11T07:00:00.000Z', ['sinking'])
    expect(since()).toEqual(['09T07:00', '10T09:00'])
    expect(since(26)).toEqual(['09T06:59', '09T07:00', '10T09:00'])
    for (const well of ['swimming_well', 'all_well'] as const) {
      const found = seen('2026-03-09T18:30:00.000Z', [well])
      expect(since()).toEqual(['10T09:00'])
      room.snapshot.facts = room.snapshot.facts.filter(({ id }) => id !== found.id)
    }
  })

  test('are looked at again: what is ticked, what was done from the least on, and a note', () => {
    const fields = troubleFields()
    expect(fields.map(({ name }) => name)).toEqual(['signs', 'did', 'note'])
    expect(valuesOf(fields[1]!)).toEqual([
      { value: 'nothing', label: 'nothing but looked' },
      { value: 'thinned', label: 'changed part of the water' },
      { value: 'restarted', label: 'restarted it elsewhere' },
    ])
  })

  test('are passed where none is ticked, and stand with what was done where one is', () => {
    const kept = (values: Record<string, unknown>) => troubleFacts('R1', values).map(({ data }) => data)
    expect(kept({})).toEqual([{ signs: ['swimming_well'] }])
    expect(kept({ did: 'nothing' })).toEqual([{ signs: ['swimming_well'], note: 'nothing but looked' }])
    expect(kept({ signs: ['foam'] })).toEqual([{ signs: ['foam'] }])
    expect(kept({ signs: ['foam'], did: 'restarted', note: 'In the blue tub.' })).toEqual([
      { signs: ['foam'], note: 'restarted it elsewhere; In the blue tub.' },
    ])
    expect(kept({ note: 'Air was off.' })).toEqual([{ signs: ['swimming_well'], note: 'Air was off.' }])
  })
})
