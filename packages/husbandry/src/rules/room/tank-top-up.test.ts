import { describe, expect, test } from 'vitest'
import { electricityCautions } from '../../task/cautions.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { tankTopUp } from './tank-top-up.ts'

const date = '2026-03-12'
const purified = 'Purified fresh water, never salt water: only water evaporates.'

/** A pair's tank of 100 L at 35 and one of 50 L, whose water was changed three days ago. */
function walk(names: string[]) {
  const room = new SnapshotBuilder()
  const tanks = names.map((name, index) => {
    const tank = room.tank({ name, kind: 'broodstock', volumeL: index === 0 ? 100 : 50, salinity: 35, hasFilter: true })
    room.pair({ tankId: tank.id })
    room.fact('water_change', tank.id, '2026-03-09T12:30:00.000Z', { removedL: 10, addedL: 10 })
    return tank
  })
  const read = (of: number, salinity: number, at = `${date}T06:30:00.000Z`) =>
    room.fact('water_test', tanks[of]!.id, at, { salinity })
  const asked = (on = date) => room.drafts(on, [tankTopUp]).drafts
  return { room, tanks, read, asked }
}

describe('filling tanks up with fresh water', () => {
  test('can wait until midday where a room has a third round, and is the morning’s where it has not', () => {
    const { room, asked } = walk(['A'])
    expect(asked()[0]?.roundId).toBe('midday')
    room.snapshot.room.rounds = room.snapshot.room.rounds.filter(({ id }) => id !== 'midday')
    expect(asked()[0]?.roundId).toBe('morning')
  })

  test('of one tank is as much as its salinity says, with why and with care for the plugs', () => {
    const { read, asked, tanks } = walk(['A'])
    read(0, 36)
    const [draft] = asked()
    expect(saidTitle(draft)).toBe('2.9 L fresh water in')
    expect(saidSteps(draft)).toEqual([purified, expect.stringMatching(/to the mark and no further/)])
    expect(draft?.content).toMatchObject({ amountOf: 'fresh water', cautions: electricityCautions })
    expect(draft?.content.fields).toMatchObject([{ name: 'addedL', label: 'Fresh water put in', isRequired: false }])
    expect(whyLines(draft)).toEqual([
      ...['100 L in A', 'and 36 psu salinity read by hand', 'and 35 psu its salinity', 'equals 2.9 L evaporated'],
      'and 3 days from one top-up to the next',
    ])
    expect(draft?.content.because.map(({ origin }) => ('subjectId' in origin ? origin.subjectId : null))).toEqual([
      ...[tanks[0]!.id, tanks[0]!.id, tanks[0]!.id, null, null],
    ])
  })

  test('of one whose salinity nobody read is to its mark, and how much it took has to be said', () => {
    const { asked } = walk(['A'])
    const [draft] = asked()
    expect([saidTitle(draft), draft?.content.amountOf]).toEqual(['Top up to the mark', null])
    expect(whyLines(draft)).toEqual([
      '35 psu set, no fresh reading',
      'and 3 days from one top-up to the next',
      'and 1 days since the reading at most',
    ])
    expect(signOff(tankTopUp, draft!).facts).toEqual([])
  })

  test('is one walk for a station: the first in order of name stands for all, each with its own number', () => {
    const { room, read, asked, tanks } = walk(['B', 'A'])
    read(0, 36)
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    expect([draft.subjectName, saidTitle(draft)]).toEqual(['A', 'Top up to the mark, B too'])
    expect(draft.content.amount).toBeNull()
    // A was not read: nothing can be said of it.
    expect(saidSteps(draft)).toEqual(['B: 2.9 L by its salinity.', purified, expect.any(String)])
    expect(draft.content.fields).toMatchObject([
      { name: 'addedL', label: 'Put into A', isRequired: true, usual: null, maximum: 25 },
      { name: 'addedL2', label: 'Put into B', isRequired: false, usual: 2.9, maximum: 50 },
    ])
    expect(whyLines(draft)).toEqual([
      ...['35 psu set, no fresh reading', 'and 100 L in B', 'and 36 psu salinity read by hand'],
      ...['and 35 psu its salinity', 'equals 2.9 L evaporated'],
      ...['and 3 days from one top-up to the next', 'and 1 days since the reading at most'],
    ])
    const fresh = (subject: number, addedL: number) => ({
      ...{ kind: 'water_change', subjectId: tanks[subject]!.id },
      data: { removedL: 0, addedL, salinity: 0 },
    })
    expect(signOff(tankTopUp, draft, { addedL: 0.8 }).facts).toEqual([fresh(1, 0.8), fresh(0, 2.9)])
    expect(signOff(tankTopUp, draft, { addedL2: 2 }).facts).toEqual([fresh(0, 2)])
    // A task of before they were walked together knew one tank only.
    const before = { ...draft, context: { plannedL: 1.5 } }
    expect(signOff(tankTopUp, before).facts).toEqual([fresh(1, 1.5)])
    expect(room.drafts('2026-03-11', [tankTopUp]).drafts).toEqual([])
  })

  test('of three that were all read says the litres of each and no sum, which no jug of one tank holds', () => {
    const { read, asked } = walk(['A', 'B', 'C'])
    for (const of of [0, 1, 2]) read(of, 36)
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    expect([saidTitle(draft), draft.content.amount]).toEqual(['Top up to the mark, B, C too', null])
    // 100 L at 36 want 2.86 L to be at 35, 50 L half of that.
    expect(saidSteps(draft).slice(0, 3)).toEqual([
      'A: 2.9 L by its salinity.',
      'B: 1.4 L by its salinity.',
      'C: 1.4 L by its salinity.',
    ])
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['addedL', 'addedL2', 'addedL3'])
    // All of them were read: nobody asks how old a reading may be.
    expect(whyLines(draft).at(-1)).toBe('and 3 days from one top-up to the next')
    const both = walk(['A', 'B'])
    both.read(0, 36)
    both.read(1, 36)
    expect(onlyDraft({ drafts: both.asked(), gaps: [] }).content.amount).toBeNull()
  })
})
