import type { CureChange } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { foodBuyIn } from './food-buy-in.ts'
import { foodStartCulture } from './food-start-culture.ts'

// A Tuesday.
const date = '2026-03-10'
const startedAt = '2026-02-17T08:00:00.000Z'

const choose = (room: SnapshotBuilder, change: CureChange, at = `${date}T06:55:00.000Z`) =>
  room.fact('cure', room.snapshot.room.id, at, { change, planMadeAt: `${date}T06:50:00.000Z` })

describe('rotifers that are bought in', () => {
  const asked = (room: SnapshotBuilder, on = date) => room.drafts(on, [foodBuyIn]).drafts

  test('are ordered by somebody who may, with the day on which they have to be ordered at the latest', () => {
    const room = new SnapshotBuilder()
    choose(room, { kind: 'buy_in', animals: 4_440_000, onDate: '2026-03-13' })
    const [draft] = asked(room)
    expect(draft).toMatchObject({ roundId: 'morning', isForStandIn: false, ordinal: 1 })
    expect(saidTitle(draft)).toBe('Order 4.4 million live rotifers, to come on Fri 13 Mar')
    expect(draft?.content).toMatchObject({ amount: { value: 4_400_000 }, amountOf: 'live rotifers' })
    expect(draft?.content.fields.map(({ name }) => name)).toEqual(['note'])
    expect(whyLines(draft)).toEqual(['4400000 animals missing without them', '2 days from the order to the parcel'])
    // Two days from the order to the parcel: Wednesday.
    expect(saidTitle(asked(room, '2026-03-11')[0])).toBe(
      'Order 4.4 million live rotifers, to come on Fri 13 Mar: today is the last day for it',
    )
    expect(saidTitle(asked(room, '2026-03-12')[0])).toContain('today is the last day for it')
  })

  test('are ordered once for their day: another parcel, and an order of before they were chosen, are other matters', () => {
    const room = new SnapshotBuilder()
    const order = (forDate: string, at: string) =>
      room.fact('care', room.snapshot.room.id, at, { act: 'order_rotifers', forDate })
    choose(room, { kind: 'buy_in', animals: 4e6, onDate: '2026-03-13' })
    order('2026-03-13', `${date}T06:54:00.000Z`)
    order('2026-03-20', `${date}T07:00:00.000Z`)
    room.fact('care', room.snapshot.room.id, `${date}T07:00:00.000Z`, { act: 'mix_water', forDate: '2026-03-13' })
    expect(asked(room)).toHaveLength(1)
    // In one breath with the choice it counts.
    order('2026-03-13', `${date}T06:55:00.000Z`)
    expect(asked(room)).toEqual([])
    const draft = asked(new SnapshotBuilder())
    expect(draft).toEqual([])
  })

  test('of two parcels each has its own task, and a note is kept with the order', () => {
    const room = new SnapshotBuilder()
    choose(room, { kind: 'buy_in', animals: 4e6, onDate: '2026-03-13' })
    choose(room, { kind: 'buy_in', animals: 2e6, onDate: '2026-03-17' }, `${date}T06:56:00.000Z`)
    const [first, second] = asked(room)
    expect([first?.ordinal, second?.ordinal]).toEqual([1, 2])
    const kept = (values: Record<string, unknown>) => signOff(foodBuyIn, second!, values).facts
    const care = (data: object) => [{ kind: 'care', subjectId: room.snapshot.room.id, data }]
    expect(kept({})).toEqual(care({ act: 'order_rotifers', forDate: '2026-03-17' }))
    expect(kept({ note: 'Comes by noon.' })).toEqual(
      care({ act: 'order_rotifers', forDate: '2026-03-17', note: 'Comes by noon.' }),
    )
  })

  test('are set up like the room’s other rotifers, 200 a mL at most, a litre at the least, apart for two weeks', () => {
    const room = new SnapshotBuilder()
    room.culture({ name: 'A1', kind: 'microalgae', strain: null, startedAt, salinity: 12 })
    room.culture({ startedAt, salinity: 22, temperatureC: 24, strain: 'S' })
    const arrival = (animals: number) => {
      room.snapshot.facts = []
      choose(room, { kind: 'buy_in', animals, onDate: date })
      return asked(room)[0]!
    }
    const draft = arrival(2_100_000)
    expect(draft).toMatchObject({ roundId: 'morning', isForStandIn: false })
    expect(saidTitle(draft)).toBe('Start a culture with the rotifers that come today, 2.1 million ordered')
    // 2.1 million at 200 a mL: 10.5, so 11 L.
    expect(saidSteps(draft).slice(2)).toEqual([
      'About 11 L of clean water at 22 psu; they may feed larvae from today on.',
      'Keep their tools apart for 14 days: what comes from elsewhere may bring something along.',
    ])
    expect(draft.content.fields).toMatchObject([
      { name: 'animals', usual: 2_100_000 },
      { name: 'volumeL', usual: 11 },
    ])
    expect(whyLines(draft)).toEqual(['2100000 animals bought in'])
    expect(arrival(50_000).content.fields[1]).toMatchObject({ usual: 1 })
    const { facts, creations } = signOff(foodBuyIn, draft, { animals: 1_234_567, volumeL: 9 })
    // 137.17 a mL, to three figures.
    expect([facts, creations]).toEqual([
      [],
      [
        {
          ...{ kind: 'culture', volumeL: 9, temperatureC: 24, salinity: 22, strain: 'S', concentrateId: null },
          ...{ parentCultureId: null, drawnL: 0, startDensityPerMl: 137 },
        },
      ],
    ])
    // 2.1 million in 11 L.
    expect(signOff(foodBuyIn, draft).creations).toMatchObject([{ volumeL: 11, startDensityPerMl: 191 }])
  })

  test('in a room that has no rotifers get 10 L at 25 and 25 °C', () => {
    const room = new SnapshotBuilder()
    choose(room, { kind: 'buy_in', animals: 2e6, onDate: date })
    expect(signOff(foodBuyIn, asked(room)[0]!).creations).toEqual([
      {
        ...{ kind: 'culture', volumeL: 10, temperatureC: 25, salinity: 25, strain: 'L', concentrateId: null },
        ...{ parentCultureId: null, drawnL: 0, startDensityPerMl: 200 },
      },
    ])
  })
})

describe('a culture that the plan asks for', () => {
  /** R1 and R2, of which R2 was counted this morning; 10 L are to be started from it. */
  function started(perMl: number | null, change: Partial<Extract<CureChange, { kind: 'start_culture' }>> = {}) {
    const room = new SnapshotBuilder()
    room.culture({ name: 'R1', startedAt })
    const parent = room.culture({ name: 'R2', startedAt, salinity: 22, temperatureC: 24, strain: null })
    if (perMl !== null) room.count(parent, `${date}T06:30:00.000Z`, [perMl, perMl, perMl])
    choose(room, {
      ...{ kind: 'start_culture', cultureId: parent.id, volumeL: 10, animals: 600_000, onDate: date },
      ...change,
    })
    return { room, parent, asked: (on = date) => room.drafts(on, [foodStartCulture]) }
  }

  test('is begun at midday out of the culture that was named: 600,000 of 216,000 a litre are 2.8 L', () => {
    const { asked, parent } = started(240)
    // 240 a mL, a tenth lost in the sieve; 2.778 L, and the next mark of a jug.
    const [draft] = asked().drafts
    expect(draft).toMatchObject({ roundId: 'midday', isForStandIn: false, ordinal: 1 })
    expect(saidTitle(draft)).toBe('Start a rotifer culture, 10 L in all, 2.8 L of R2, sieved')
    expect(draft?.content).toMatchObject({ amount: { value: 2.8, unit: 'L' }, amountOf: 'R2, sieved' })
    expect(saidSteps(draft).slice(0, 2)).toEqual([
      'Fill a clean, disinfected and rinsed vessel of 10 L with new water of 22 psu, as warm as it is there.',
      'Sieve 2.8 L of R2, rinse well, and put the animals in.',
    ])
    expect(saidSteps(draft)).toHaveLength(4)
    expect(draft?.content.fields).toMatchObject([{ name: 'drawnL', usual: 2.8, maximum: 18, step: 0.1 }])
    expect(whyLines(draft)).toEqual([
      ...[
        '600000 animals to start with',
        'divided by 240 per_mL counted',
        'and 216 per_mL in R2',
        'equals 2.8 L of R2',
      ],
    ])
    // 3 L of 216,000 in 10 L are 64.8 a mL.
    const made = signOff(foodStartCulture, draft!, { drawnL: 3 })
    expect(made).toEqual({
      facts: [],
      creations: [
        {
          ...{ kind: 'culture', volumeL: 10, temperatureC: 24, salinity: 22, strain: 'L', concentrateId: null },
          ...{ parentCultureId: parent.id, drawnL: 3, startDensityPerMl: 64.8 },
        },
      ],
    })
    // 60.48.
    expect(signOff(foodStartCulture, draft!).creations).toMatchObject([{ drawnL: 2.8, startDensityPerMl: 60.5 }])
  })

  test('is begun on its day and, where that was missed, after it', () => {
    const { asked } = started(240, { onDate: '2026-03-11' })
    expect([asked().drafts.length, asked('2026-03-11').drafts.length, asked('2026-03-12').drafts.length]).toEqual([
      ...[0, 1, 1],
    ])
  })

  test('out of a culture whose growth since the last count is reckoned, divides by the first of the chain alone', () => {
    const { room, parent, asked } = started(240)
    room.fact('harvest', parent.id, `${date}T06:40:00.000Z`, { volumeL: 1.8, parts: [{ to: 'drain', volumeL: 1.8 }] })
    expect(whyLines(asked().drafts[0]).slice(1, 4)).toEqual([
      ...['divided by 240 per_mL counted', 'times 0.9 share left after a harvest', 'and 194 per_mL in R2'],
    ])
  })

  test('of which its parent cannot give enough today is begun with fewer, and says so', () => {
    const { asked } = started(240, { animals: 5_000_000 })
    const [draft] = asked().drafts
    // Half of 18 L in a day.
    expect(draft?.content.amount).toEqual({ value: 9, unit: 'L' })
    expect(saidSteps(draft)[4]).toBe('R2 cannot give more today: it starts with fewer than the plan counts on.')
  })

  test('waits while its parent is not counted, is empty or has given all, and is forgotten where that has ended', () => {
    const gaps = ({ asked }: Pick<ReturnType<typeof started>, 'asked'>) => {
      const { drafts, gaps } = asked()
      expect(drafts).toEqual([])
      return gaps.map(({ message }) => message)
    }
    const count = ['A culture is to be started from R2: count R2, and the amount follows.']
    expect([gaps(started(null)), gaps(started(0))]).toEqual([count, count])
    const drained = started(240)
    const parts = [{ to: 'drain' as const, volumeL: 9 }]
    drained.room.fact('harvest', drained.parent.id, `${date}T06:40:00.000Z`, { volumeL: 9, parts })
    expect(gaps(drained)).toEqual([
      'A culture is to be started from R2, which has given all it can today. Start it tomorrow.',
    ])
    const ended = started(240)
    ended.room.snapshot.cultures.pop()
    expect(gaps(ended)).toEqual([])
  })

  test('of two each has its own task', () => {
    const { room, parent, asked } = started(240)
    choose(
      room,
      { kind: 'start_culture', cultureId: parent.id, volumeL: 5, animals: 300_000, onDate: date },
      `${date}T06:56:00.000Z`,
    )
    expect(asked().drafts.map(({ ordinal, content }) => [ordinal, content.amount?.value])).toEqual([
      [1, 2.8],
      // 1.389 L.
      [2, 1.4],
    ])
  })
})
