import { describe, expect, test } from 'vitest'
import type { SnapshotConcentrate } from '../../snapshot/room-snapshot.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { concentrateShake, concentrateUseBy } from './concentrates.ts'

const date = '2026-03-10'
const shaken = (room: SnapshotBuilder, on = date) =>
  room.drafts(on, [concentrateShake]).drafts.map((draft) => saidTitle(draft))

describe('turning bottles over', () => {
  test('is for those that nothing was fed from yesterday: neither today’s feed nor one before spares it', () => {
    const fedOn = (at: string, by: 'culture' | 'larvae') => {
      const room = new SnapshotBuilder()
      const bottle = room.concentrate({ name: 'green' })
      const { id } =
        by === 'culture'
          ? room.culture({ startedAt: '2026-03-01T08:00:00.000Z' })
          : room.batch({ hatchedOn: '2026-03-06' })
      room.fact('feeding', id, at, { food: 'concentrate', concentrateId: bottle.id })
      return shaken(room)
    }
    const still = ['Turn over green']
    for (const by of ['culture', 'larvae'] as const) {
      expect(fedOn('2026-03-09T00:00:00.000Z', by)).toEqual([])
      expect(fedOn('2026-03-09T23:59:00.000Z', by)).toEqual([])
      expect(fedOn('2026-03-08T23:59:00.000Z', by)).toEqual(still)
      expect(fedOn('2026-03-10T00:00:00.000Z', by)).toEqual(still)
    }
  })

  test('is done in the morning, near 4 °C, and once a day', () => {
    const room = new SnapshotBuilder()
    room.concentrate({ name: 'green' })
    const draft = onlyDraft(room.drafts(date, [concentrateShake]))
    expect([draft.roundId, draft.content.verb]).toEqual(['morning', 'shake'])
    expect(saidSteps(draft)).toEqual([
      expect.stringMatching(/ten times/),
      'In the refrigerator, near 4 degC, never frozen.',
    ])
    expect(whyLines(draft)[0]).toBe('not yet done')
    room.append(signOff(concentrateShake, draft).facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    expect([shaken(room), shaken(room, '2026-03-11')]).toEqual([[], ['Turn over green']])
    expect(whyLines(room.drafts('2026-03-11', [concentrateShake]).drafts[0])[0]).toBe('last done')
  })
})

describe('the age of a bottle', () => {
  const asked = (given: Partial<SnapshotConcentrate>) => {
    const room = new SnapshotBuilder()
    room.concentrate({ name: 'green', ...given })
    return { room, drafts: room.drafts(date, [concentrateUseBy]).drafts }
  }
  const said = (given: Partial<SnapshotConcentrate>) => asked(given).drafts.map((draft) => saidTitle(draft))

  test('is spoken of from a week before its date; on that day it is still good, the day after it is not', () => {
    expect(said({ useBy: '2026-03-18' })).toEqual([])
    expect(said({ useBy: '2026-03-17' })).toEqual([
      'Buy the next bottle of green: this one is to be used by Tue 17 Mar',
    ])
    expect(said({ useBy: '2026-03-10' })[0]).toContain('Buy the next bottle')
    expect(said({ useBy: '2026-03-09' })).toEqual(['Discard green: past its time, open the next'])
  })

  test('open for sixty days it is past its time, whatever its date', () => {
    // 2026-01-09 is 60 days before.
    expect(said({ openedOn: '2026-01-10' })).toEqual([])
    expect(said({ openedOn: '2026-01-09' })).toEqual(['Discard green: past its time, open the next'])
    expect(said({ openedOn: '2026-01-09', useBy: '2026-12-31' })).toHaveLength(1)
    expect(said({ openedOn: '2026-01-10', useBy: '2026-03-12' })[0]).toContain('Buy the next bottle')
  })

  test('is read off its label, and off the rule that it is past', () => {
    const why = (given: Partial<SnapshotConcentrate>) => whyLines(asked(given).drafts[0])
    const [week, opened] = ['and 7 days before its date', 'and 60 days open']
    expect(why({ useBy: '2026-03-15' })).toEqual(['use by 2026-03-15', week])
    expect(why({ useBy: '2026-03-09' })).toEqual(['use by 2026-03-09', week])
    // On its last day it is past for having been open too long, not for its date.
    expect(why({ useBy: '2026-03-10', openedOn: '2026-01-09' }).at(-1)).toBe(opened)
    expect(why({ openedOn: '2026-01-09' })).toEqual(['60 days open', opened])
    const [both] = asked({ openedOn: '2026-01-08', useBy: '2026-04-01' }).drafts
    expect(whyLines(both)).toEqual(['use by 2026-04-01', 'and 61 days open', opened])
    expect(both?.content.because.map(({ origin }) => (origin.kind === 'setting' ? origin.where : null))).toEqual([
      ...['bottle green', 'bottle green', null],
    ])
  })

  test('is thrown away where it is past and looked after where it soon will be; each is said once', () => {
    const { room, drafts } = asked({ useBy: '2026-03-12' })
    const [soon] = drafts
    expect([soon?.roundId, soon?.content.verb]).toEqual(['morning', 'check'])
    room.append(signOff(concentrateUseBy, soon!).facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    const on = (day: string) => room.drafts(day, [concentrateUseBy]).drafts
    expect([on('2026-03-11'), on('2026-03-12')]).toEqual([[], []])
    // Past its date it is another matter.
    const [past] = on('2026-03-13')
    expect([past?.content.verb, saidTitle(past)]).toEqual(['discard', 'Discard green: past its time, open the next'])
    room.append(signOff(concentrateUseBy, past!).facts[0]!, { at: '2026-03-13T07:10:00.000Z' })
    expect(on('2026-03-14')).toEqual([])
    // Of each bottle by itself.
    room.concentrate({ name: 'brown', useBy: '2026-03-13' })
    expect(on('2026-03-14').map((draft) => saidTitle(draft))).toEqual(['Discard brown: past its time, open the next'])
    room.concentrate({ name: 'red', useBy: '2026-03-15' })
    expect(on('2026-03-14').map(({ content }) => content.verb)).toEqual(['discard', 'check'])
  })

  test('keeps its place in the list whichever other bottle has been seen to', () => {
    const room = new SnapshotBuilder()
    for (const name of ['first', 'second']) room.concentrate({ name, useBy: '2026-03-01' })
    room.snapshot.concentrates.reverse()
    const { drafts } = room.drafts(date, [concentrateUseBy])
    expect(drafts.map((draft) => [draft.ordinal, saidTitle(draft)])).toEqual([
      [1, expect.stringContaining('first')],
      [2, expect.stringContaining('second')],
    ])
  })
})
