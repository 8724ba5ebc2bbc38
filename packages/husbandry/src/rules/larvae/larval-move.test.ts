import { describe, expect, test } from 'vitest'
import { larvaeRoom } from '../../testing/forms/form-rooms.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, type SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { larvalMove } from './larval-move.ts'

const date = '2026-03-10'
const clownfish = 'amphiprion-ocellaris'
const notAll = (food: string) =>
  `Nobody has written that nearly all take ${food}: move only those that take it in front of you. The others stay where their live food is.`
const noNet = 'No net: a jug or a cup under water. Count every one, twice if they are few; five of them to a ruler.'
const drip = 'Half an hour on a drip line of water from Grow-out, until they are as warm as it is.'
const lightsLow = (food: string) => `Lights low for the rest of the day; ${food} in the evening.`

/** Two hundred, and a grow-out tank of 420 L at their salinity: half a fish a litre. */
function young(given: Partial<Parameters<typeof larvaeRoom>[0]> & { growOutL?: number } = {}) {
  const { growOutL = 420, ...about } = given
  const made = larvaeRoom({ species: clownfish, hatchedOn: '2026-02-20', larvae: 200, ...about })
  const growOut = made.room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: growOutL, salinity: 30 })
  const settled = () => made.room.fact('observation', made.batch.id, '2026-03-09T12:00:00.000Z', { signs: ['settled'] })
  const weaned = (food: 'dry' | 'frozen' = 'dry') =>
    made.room.fact('feeding', made.batch.id, '2026-03-09T18:30:00.000Z', { food, note: 'Nearly all take it.' })
  return { ...made, growOut, settled, weaned }
}
const moves = (room: SnapshotBuilder, on = date) => room.drafts(on, [larvalMove]).drafts
/** The first day of the year on which a move is asked for. */
const firstAsked = (room: SnapshotBuilder, from: string): string | undefined =>
  Array.from({ length: 90 }, (_, days) => new Date(Date.parse(`${from}T12:00:00Z`) + days * 86_400_000))
    .map((day) => day.toISOString().slice(0, 10))
    .find((on) => moves(room, on).length > 0)

describe('a move to grow-out', () => {
  test('of larvae that settled and are weaned says how, and why today', () => {
    const { room, settled, weaned } = young()
    settled()
    weaned()
    const draft = onlyDraft({ drafts: moves(room), gaps: [] })
    expect([draft.roundId, draft.content.verb, saidTitle(draft)]).toEqual([
      'midday',
      'move',
      'Move to Grow-out, counted',
    ])
    expect(saidSteps(draft)).toEqual([noNet, drip, lightsLow('dry food')])
    expect(draft.content.looks).toEqual(['settled_larvae', 'deformed_larvae'])
    // Bars appear at some eleven days (Roux et al. 2019); 0.5 x 420.
    expect(whyLines(draft)).toEqual([
      ...['seen most barred and settled', 'and likely to settle 2026-03-01 to 2026-03-05'],
      ...['and 25 days old when dry food is all', 'and 210 animals room in Grow-out'],
      'and 7 days after it should have settled',
    ])
  })

  test('of those that nobody called weaned takes only who eats in front of somebody', () => {
    const draft = onlyDraft({ drafts: moves(young({ hatchedOn: '2026-02-01' }).room), gaps: [] })
    expect(saidSteps(draft)).toEqual([notAll('dry food'), noNet, drip, lightsLow('dry food')])
    expect(whyLines(draft)[0]).toBe('likely to settle 2026-02-10 to 2026-02-14')
  })

  test('of young that a pouch let go waits for frozen food alone, with no settling to be seen', () => {
    const { room, weaned } = young({ species: 'hippocampus-erectus', hatchedOn: '2026-01-05', larvae: 50 })
    expect(moves(room)).toEqual([])
    weaned('frozen')
    const draft = onlyDraft({ drafts: moves(room), gaps: [] })
    expect(saidSteps(draft)).toEqual([noNet, drip, lightsLow('frozen food')])
    expect(draft.content.looks).toEqual(['deformed_larvae'])
    expect(whyLines(draft)).toEqual([
      ...['70 days old when frozen food is all', 'and 210 animals room in Grow-out'],
      'and 7 days after it should have settled',
    ])
  })

  test('where a room offers dry food by no task is decided by whoever saw them settle', () => {
    const { room, settled } = young()
    settled()
    expect(moves(room)).toEqual([])
    room.setting('larval-wean', { isOn: false })
    expect(saidSteps(moves(room)[0])).toEqual([noNet, drip, lightsLow('dry food')])
  })

  test('weaned larvae that nobody saw settle stay', () => {
    const { room, weaned } = young()
    weaned()
    expect(moves(room)).toEqual([])
  })

  test('is asked a week after all should be weaned, or after the last should have settled where that is later', () => {
    const first = (species: string, temperatureC: number) => {
      const { room, tank } = young({ species, hatchedOn: '2026-02-01' })
      tank.temperatureC = temperatureC
      return firstAsked(room, '2026-02-20')
    }
    // Dry food alone from day 25: day 32 is 6 March. In a goby from day 45; at 23 C the last settles on day 47.
    expect(first(clownfish, 27)).toBe('2026-03-06')
    expect([first('elacatinus-figaro', 26), first('elacatinus-figaro', 23)]).toEqual(['2026-03-26', '2026-03-28'])
    // No forecast is made for water under 10 C.
    expect(first(clownfish, 9)).toBe('2026-03-06')
  })

  test('before the first day of weaning is not asked for, whatever was seen', () => {
    const { room, settled, weaned } = young({ hatchedOn: '2026-03-05' })
    settled()
    weaned()
    expect(moves(room)).toEqual([])
    expect(moves(room, '2026-03-11')).toHaveLength(1)
  })
})

describe('where they go', () => {
  const ready = (given: Parameters<typeof young>[0]) => {
    const made = young(given)
    made.settled()
    made.weaned()
    return made
  }

  test('more than the tank holds are split, and the rest go where there is room, or stay', () => {
    const { room } = ready({ growOutL: 200 })
    const draft = () => onlyDraft({ drafts: moves(room), gaps: [] })
    expect(saidTitle(draft())).toBe('Move to Grow-out, 100 at most, counted')
    expect(saidSteps(draft())[2]).toBe(
      'Grow-out has room for 100 animals and no more. Where the rest may go: no other grow-out tank has room, so they stay until one has.',
    )
    // What is likely to be moved is a fifth more than goes in.
    expect(draft().content.fields[0]).toMatchObject({ name: 'number', likelyMaximum: 120 })
    room.tank({ name: 'B', kind: 'grow_out', volumeL: 100, salinity: 30 })
    room.tank({ name: 'C', kind: 'grow_out', volumeL: 60, salinity: 30 })
    expect(saidSteps(draft())[2]).toContain('Where the rest may go: B (50), C (30).')
    const full = room.tank({ name: 'D', kind: 'grow_out', volumeL: 20, salinity: 30 })
    room.group({ settledOn: '2026-01-01', number: 10, tankId: full.id })
    expect(saidSteps(draft())[2]).not.toContain('D (')
  })

  test('exactly as many as it holds are moved whole', () => {
    const { room } = ready({ growOutL: 400 })
    expect(saidTitle(moves(room)[0])).toBe('Move to Grow-out, counted')
    expect(saidSteps(moves(room)[0])).toHaveLength(3)
  })

  test('a room whose grow-out is full is told to place fish', () => {
    const { room, growOut } = ready({})
    room.group({ settledOn: '2026-01-01', number: 300, tankId: growOut.id })
    expect(room.drafts(date, [larvalMove]).gaps[0]?.message).toBe(
      'Batch 1 is ready to move, and no grow-out tank has room: place fish, or add a tank.',
    )
  })

  test('4 psu between the tanks are borne on a drip line, and more are taken back over days first', () => {
    const steps = (salinity: number) => {
      const { room, growOut } = ready({})
      growOut.salinity = salinity
      return saidSteps(moves(room)[0]).slice(1, -1)
    }
    const dripTo = (psu: number) =>
      `Half an hour on a drip line of water from Grow-out: from 30 psu to ${psu} psu, and as warm as it is.`
    expect(steps(34)).toEqual([dripTo(34)])
    expect(steps(35)).toEqual([
      'Nursery 1 is at 30 psu, Grow-out at 35 psu: too far to move them today. Change Nursery 1 towards it over days, until 4 psu or less are between them.',
      dripTo(35),
    ])
  })

  test('makes a group where they were put, with what was measured, and keeps the note', () => {
    const { room, batch } = ready({})
    const other = room.tank({ name: 'Other', kind: 'grow_out', volumeL: 1000, salinity: 30 })
    const { facts, creations } = signOff(larvalMove, moves(room)[0]!, {
      ...{ number: 139.6, tank: other.id, lengthMm: 12, deformed: 1, note: 'lively' },
    })
    expect(facts).toEqual([{ kind: 'observation', subjectId: batch.id, data: { note: 'lively' } }])
    expect(creations).toEqual([
      {
        kind: 'juvenile_group',
        ...{ tankId: other.id, fromBatchId: batch.id, settledOn: date, number: 140, lengthMm: 12, deformed: 1 },
      },
    ])
  })
})
