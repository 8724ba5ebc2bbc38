import { describe, expect, test } from 'vitest'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { microalgaeLook, microalgaeSplit } from './microalgae-culture.ts'

const date = '2026-03-10'

/** Ten litres of live algae at 28, begun a week ago. */
function algaeRoom(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  const startedAt = '2026-03-03T08:00:00.000Z'
  const about = { name: 'A1', kind: 'microalgae', strain: null, volumeL: 10, salinity: 28, startedAt } as const
  return { room, algae: room.culture({ ...about, ...given }) }
}

describe('looking at live algae', () => {
  const looks = (room: SnapshotBuilder, on = date) => room.drafts(on, [microalgaeLook])

  test('is asked of algae alone, from the day on which they were begun', () => {
    const { room } = algaeRoom({ startedAt: '2026-03-10T08:00:00.000Z' })
    room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
    expect([looks(room, '2026-03-09').drafts.length, looks(room).drafts.length]).toEqual([0, 1])
    // Begun as the next day begins, it is nothing of today's.
    const later = algaeRoom({ startedAt: '2026-03-11T00:00:00.000Z' })
    expect(looks(later.room).drafts).toEqual([])
  })

  test('is daily by the last look, whatever else was written; a room may make it rarer', () => {
    const { room, algae } = algaeRoom()
    expect(onlyDraft(looks(room)).roundId).toBe('morning')
    expect(whyLines(looks(room).drafts[0])).toEqual(['not yet looked at', 'and 1 days from one look to the next'])
    for (const on of ['2026-03-06', '2026-03-07', '2026-03-09'])
      room.fact('observation', algae.id, `${on}T07:00:00.000Z`, { signs: ['water_green'] })
    room.fact('water_change', algae.id, `${date}T06:00:00.000Z`, { removedL: 1, addedL: 1 })
    expect(looks(room, '2026-03-09').drafts).toEqual([])
    const [draft] = looks(room).drafts
    expect(whyLines(draft)[0]).toBe('last looked at')
    expect(draft?.content.because[0]?.origin).toMatchObject({ kind: 'fact', at: '2026-03-09T07:00:00.000Z' })
    room.setting('microalgae-look', { parameters: { everyDays: 3 } })
    expect([looks(room, '2026-03-11').drafts.length, looks(room, '2026-03-12').drafts.length]).toEqual([0, 1])
  })

  test('keeps the colour that was ticked and what was noted; the deepest is the first to tap', () => {
    const { room, algae } = algaeRoom()
    const draft = onlyDraft(looks(room))
    expect(draft.content.fields).toMatchObject([
      {
        ...{ name: 'colour', isRequired: true },
        choices: [
          { value: 'water_green', label: 'deep' },
          { value: 'water_tinted', label: 'pale' },
          { value: 'water_clear', label: 'clear, yellow or flaky' },
        ],
      },
      { name: 'note', isRequired: false },
    ])
    const kept = (values: Record<string, unknown>) => signOff(microalgaeLook, draft, values).facts
    const seen = (data: object) => [{ kind: 'observation', subjectId: algae.id, data }]
    expect(kept({ colour: 'water_green' })).toEqual(seen({ signs: ['water_green'] }))
    expect(kept({ colour: 'water_clear', note: 'Flakes.' })).toEqual(seen({ signs: ['water_clear'], note: 'Flakes.' }))
    // What nobody said holds off a split, as pale does.
    expect(kept({})).toEqual(seen({ signs: ['water_tinted'] }))
  })
})

describe('splitting live algae', () => {
  const splits = (room: SnapshotBuilder, on = date) => room.drafts(on, [microalgaeSplit])

  test('says half of it, at its own salinity, and why: its age until it was split, then the last split', () => {
    const { room, algae } = algaeRoom()
    const draft = onlyDraft(splits(room))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['morning', '5 L out, as much new water in'])
    expect(draft.content).toMatchObject({ amount: { value: 5, unit: 'L' }, amountOf: 'culture' })
    expect(whyLines(draft)).toEqual([
      '10 L in it',
      'times 0.5 share of the culture',
      'and 7 days from one split to the next',
      'and started 7 days ago 2026-03-03',
    ])
    const steps = saidSteps(draft)
    expect(steps[0]).toMatch(/^Into clean bottles/)
    expect(steps.join(' ')).toContain('at 28 psu, cool, with its fertiliser')
    expect(draft.content.fields).toMatchObject([{ name: 'amountL', label: 'Taken and put in', usual: 5, maximum: 10 }])
    for (const on of ['02', '03'])
      room.fact('water_change', algae.id, `2026-03-${on}T09:00:00.000Z`, { removedL: 5, addedL: 5 })
    const again = onlyDraft(splits(room))
    expect(whyLines(again).at(-1)).toBe('and last split')
    expect(again.content.because.at(-1)?.origin).toMatchObject({ at: '2026-03-03T09:00:00.000Z' })
  })

  test('says what was fed from it before, and takes the rest of the half off, or nothing more', () => {
    const after = (fedL: number) => {
      const { room, algae } = algaeRoom()
      const parts = [{ to: 'drain' as const, volumeL: fedL }]
      room.fact('harvest', algae.id, '2026-03-09T07:10:00.000Z', { volumeL: fedL, parts })
      const draft = onlyDraft(splits(room))
      const kept = (values: Record<string, unknown> = {}) => signOff(microalgaeSplit, draft, values).facts[0]?.data
      return { draft, kept, steps: saidSteps(draft) }
    }
    const some = after(2)
    expect(saidTitle(some.draft)).toBe('5 L new water in')
    expect(some.draft.content).toMatchObject({ amount: { value: 5, unit: 'L' }, amountOf: 'new water' })
    expect(some.steps.slice(0, 2)).toEqual([
      '2 L of it were fed since it was last full, and count as split off.',
      'Take 3 L more off, then fill it up to the mark.',
    ])
    expect(some.draft.content.fields[0]?.label).toBe('New water put in')
    // Of the 5 L that went in 2 had been fed: 3 were taken off. Less water than was fed takes nothing off.
    expect(some.kept()).toEqual({ removedL: 3, addedL: 5, salinity: 28 })
    expect(some.kept({ amountL: 4.55 })).toEqual({ removedL: 2.55, addedL: 4.55, salinity: 28 })
    expect(some.kept({ amountL: 1 })).toEqual({ removedL: 0, addedL: 1, salinity: 28 })
    const all = after(6)
    expect(all.steps[1]).toBe('Take nothing more off: fill it up to the mark.')
    expect(all.kept()).toEqual({ removedL: 0, addedL: 6, salinity: 28 })
  })

  test('that was kept before feeds were counted is signed off as it was asked', () => {
    const { room } = algaeRoom()
    const draft = { ...onlyDraft(splits(room)), context: { plannedL: 5, salinity: 28 } }
    expect(signOff(microalgaeSplit, draft).facts[0]?.data).toEqual({ removedL: 5, addedL: 5, salinity: 28 })
  })
})
