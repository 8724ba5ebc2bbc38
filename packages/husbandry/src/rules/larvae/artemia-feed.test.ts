import { describe, expect, test } from 'vitest'
import { jarRoom, larvaeRoom } from '../../testing/forms/form-rooms.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { type SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { larvalArtemiaFeed } from './artemia-feed.ts'

const date = '2026-03-10'
const feeds = (room: SnapshotBuilder, on = date) => room.drafts(on, [larvalArtemiaFeed]).drafts

/** A jar of 400 a mL that was filled up to so many mL, for larvae in 20 L that want 20,000 at each of two feeds. */
function jarOf(keptMl: number): SnapshotBuilder {
  const room = jarRoom()
  for (const fact of room.snapshot.facts) if (fact.kind === 'harvest') Object.assign(fact.data, { keptMl })
  return room
}
const hatched = (name?: string) =>
  `Newly hatched nauplii${name ? ` of ${name}` : ''}, shells left behind, rinsed, brought to the tank’s warmth.`
const anHourOn =
  'In an hour or two hardly any should be left: then this was right. Many left: give less at the next feed.'
const count = 'Count the jar first, on the page of its hatch: then this is said in mL.'
const short = 'The jar does not hold all that is wanted until the next hatch: everybody gets the same part of it.'
const usedUp = 'By what was written down the jar is used up: look at it, and write down what was really given.'
const dusting = [
  'A dusting of fine food before the live food, while they are hungry: what is gone in two minutes.',
  'Watch whether they take it or spit it out. Siphon what sinks within the hour.',
]

describe('nauplii out of a counted jar', () => {
  test('are told in mL, with how many that is and how it was worked out: 20,000 / 400', () => {
    const [first, second] = feeds(jarOf(1000))
    expect([first, second].map(saidTitle)).toEqual([
      '50 mL of the nauplii of R1, first feed, dry food first',
      '50 mL of the nauplii of R1, second feed',
    ])
    expect(first?.content.amountOf).toBe('nauplii, as counted')
    expect(saidSteps(first)).toEqual([
      ...[...dusting, hatched('R1')],
      ...['Stir the jar, then draw it up: that is about 20000 animals.', anHourOn],
    ])
    expect(whyLines(first)).toEqual([
      ...['1 per_mL Artemia to start a feed with', 'times 20 L in Nursery 1', 'equals 20000 animals to add'],
      ...['and 5 days old at the first Artemia', 'divided by 400 per_mL in the jar, counted', 'equals 50 mL to give'],
      ...['and 2 hours before dark at the last feed', 'and 3 days from the first to the full amount'],
      ...['and 3 per_mL at most', 'and weaned to dry food'],
      ...['and 5 days old at the first dry food', 'and 25 days old when dry food is all'],
    ])
    expect(saidSteps(second)).toEqual(saidSteps(first).slice(2))
    expect(whyLines(second)).toEqual(whyLines(first).slice(0, -3))
  })

  test('that hold too little for the day are the same part of each feed, and this is said', () => {
    // 70 mL of the 100 that both feeds want.
    const [first] = feeds(jarOf(70))
    expect(first?.content.amount).toEqual({ value: 35, unit: 'mL' })
    expect(saidSteps(first).slice(2, 5)).toEqual([
      ...[hatched('R1'), short, 'Stir the jar, then draw it up: that is about 14000 animals.'],
    ])
    expect(whyLines(first).slice(2, 7)).toEqual([
      ...['equals 20000 animals to add', 'and 5 days old at the first Artemia'],
      ...['times 0.7 share of it, as far as the jar goes', 'divided by 400 per_mL in the jar, counted'],
      'equals 35 mL to give',
    ])
    // A tenth is the error of a jar: 91 of 100 mL are not worth a word.
    const isSaid = (keptMl: number) => saidSteps(feeds(jarOf(keptMl))[0]).includes(short)
    expect([isSaid(89), isSaid(91)]).toEqual([true, false])
    expect(whyLines(feeds(jarOf(91))[0]).join()).not.toContain('as far as the jar goes')
  })

  test('that are all but gone by the book are told by number, and whoever stands there looks', () => {
    const told = (keptMl: number) => {
      const [first] = feeds(jarOf(keptMl))
      return [first?.content.amount?.unit, saidSteps(first).includes(usedUp), saidSteps(first).includes(count)]
    }
    // Under 5 mL there is nothing to draw up.
    expect([told(5), told(4.9)]).toEqual([
      ['mL', false, false],
      ['animals', true, false],
    ])
  })

  test('written down are mL and animals: what was given, by the jar’s count', () => {
    const room = jarOf(1000)
    const [first] = feeds(room)
    const [batch] = room.snapshot.batches
    const [hatcher] = room.snapshot.cultures
    const fed = (values: Record<string, unknown>) => signOff(larvalArtemiaFeed, first!, values).facts
    const data = { food: 'artemia', fromCultureId: hatcher?.id }
    expect(fed({})).toEqual([
      { kind: 'feeding', subjectId: batch?.id, data: { ...data, amountMl: 50, animals: 20_000 } },
      { kind: 'feeding', subjectId: batch?.id, data: { food: 'dry' } },
    ])
    expect(signOff(larvalArtemiaFeed, feeds(room)[1]!).facts).toHaveLength(1)
    expect(fed({ amountMl: 40 })[0]).toMatchObject({ data: { ...data, amountMl: 40, animals: 16_000 } })
  })

  test('never come to more than the hatch holds, nor to less than the first mark of a syringe', () => {
    const amount = (perMl: number) => {
      const room = jarOf(100_000)
      for (const fact of room.snapshot.facts)
        if (fact.kind === 'count' && fact.data.of === 'culture')
          Object.assign(fact.data, { animals: [perMl], volumeMl: 1 })
      return feeds(room)[0]?.content.amount?.value
    }
    // 20,000 of 5 a mL would be 4 L of a hatch of 2; of 400,000 a mL 0.05 mL.
    expect([amount(10), amount(5), amount(400_000)]).toEqual([2000, 2000, 0.1])
  })
})

describe('nauplii that nobody counted', () => {
  test('are told by number, and a room without a hatch is not sent to count a jar', () => {
    const { room } = larvaeRoom({ hatchedOn: '2026-03-01' })
    const [none] = feeds(room)
    expect(none?.content).toMatchObject({
      amount: { value: 20_000, unit: 'animals' },
      amountOf: 'newly hatched nauplii',
    })
    expect(saidTitle(none)).toBe('20,000 Artemia nauplii, first feed, dry food first')
    expect(saidSteps(none)).toEqual([...dusting, hatched(), anHourOn])
    room.culture({ name: 'H1', kind: 'artemia_hatch', strain: null, startedAt: '2026-02-01T08:00:00.000Z' })
    expect(saidSteps(feeds(room)[0])).toEqual([...dusting, hatched('H1'), count, anHourOn])
  })

  test('go without dry food at the feeds of a day on which that was offered before them', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01' })
    room.fact('feeding', batch.id, `${date}T07:05:00.000Z`, { food: 'dry' })
    expect(feeds(room).map(saidTitle)).toEqual([
      ...['20,000 Artemia nauplii, first feed', '20,000 Artemia nauplii, second feed'],
    ])
  })

  test('on the first day are few, beside rotifers; where they are the first food of all there is nothing beside them', () => {
    const young = (species: string, hatchedOn: string) =>
      saidSteps(feeds(larvaeRoom({ species, hatchedOn, larvae: 200 }).room)[0])
    const first = 'Their first Artemia: give a little, watch who takes it, keep the rotifers up.'
    const clownfish = 'amphiprion-ocellaris'
    expect(young(clownfish, '2026-03-04')).toContain(first)
    expect(young(clownfish, '2026-03-03')).not.toContain(first)
    expect(young('hippocampus-erectus', '2026-03-09')[0]).toBe('Their first food: watch who takes it.')
  })
})

describe('why so many', () => {
  test('by the book’s larvae and by what was counted as left: (0.76 - 0.4) x 20,000', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-02-10', larvae: 200 })
    room.fact('feeding', batch.id, '2026-03-08T07:10:00.000Z', { food: 'dry', note: 'Nearly all take it.' })
    room.fact('count', batch.id, '2026-03-10T06:50:00.000Z', { of: 'prey_artemia', animals: [400], volumeMl: 1000 })
    // Day 27: 500 x 200 for 5.5 of 12 h are 2.29 a mL, and a third of it on the second of three days.
    expect(whyLines(feeds(room)[0]).slice(0, 8)).toEqual([
      ...['200 animals larvae by the book', 'and 500 animals for a larva of 20 days, a day'],
      ...['and 0.76 per_mL Artemia to start a feed with', 'and 0.33 share of it, as they take dry food'],
      ...['and 3 days from nearly all weaned to no Artemia', 'minus 0.4 per_mL left, counted'],
      ...['times 20 L in Nursery 1', 'equals 7300 animals to add'],
    ])
  })

  test('by what looks say is likely left: three quarters of a feed are withheld at the most', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01', larvae: 100 })
    for (const [leftPerMl, at] of [
      [2, '2026-03-09T07:00:00.000Z'],
      [2.2, '2026-03-09T12:30:00.000Z'],
    ] as const) {
      const data = { of: 'prey_artemia' as const, animals: [leftPerMl * 1000], volumeMl: 1000 }
      room.fact('count', batch.id, at, data)
      room.fact('feeding', batch.id, at, { food: 'artemia', animals: 10_000 })
    }
    expect(whyLines(feeds(room)[0]).slice(2, 6)).toEqual([
      ...['and 0.5 per_mL Artemia to start a feed with', 'minus 0.38 per_mL likely left'],
      ...['times 20 L in Nursery 1', 'equals 2500 animals to add'],
    ])
  })
})

describe('a feed after many were left at the one before', () => {
  /** 100 larvae of nine days in 20 L want 0.54 a mL at noon; 0.9 were left in the morning. */
  const asked = (...changed: [litres: number, at: string][]) => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01', larvae: 100 })
    const at = '2026-03-10T07:10:00.000Z'
    room.fact('count', batch.id, at, { of: 'prey_artemia', animals: [900], volumeMl: 1000 })
    room.fact('feeding', batch.id, at, { food: 'artemia', animals: 1 })
    for (const [litres, on] of changed)
      room.fact('water_change', batch.tankId, on, { removedL: litres, addedL: litres })
    return feeds(room).map(({ content }) => [
      whyLines({ content }).find((line) => / left/.test(line)),
      content.amount?.value,
    ])
  }

  test('is none while as much is there, and what is missing once changed water took its part, in its own round too', () => {
    expect(asked()).toEqual([])
    // Half of the water, half of the 0.9: (0.54 - 0.45) x 20,000.
    for (const on of ['2026-03-10T09:00:00.000Z', '2026-03-10T12:40:00.000Z'])
      expect(asked([10, on]), on).toEqual([['minus 0.45 per_mL likely left', 1800]])
  })
})

describe('a task that was kept by an older list', () => {
  test('is signed off as what it asked for: by number, and of dry food only where it asked for it', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01' })
    const [first] = feeds(room)
    const kept = (context: object) => signOff(larvalArtemiaFeed, { ...first!, context }, {}).facts
    const fed = { kind: 'feeding', subjectId: batch.id, data: { food: 'artemia', animals: 20_000 } }
    expect(kept({ nauplii: 20_000, vesselId: null })).toEqual([fed])
    expect(kept({ nauplii: 20_000, vesselId: null, withDry: true })).toEqual([
      fed,
      { kind: 'feeding', subjectId: batch.id, data: { food: 'dry' } },
    ])
  })

  test('what was left of the last feed is written down as of a litre', () => {
    const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01' })
    const facts = (values: object) => signOff(larvalArtemiaFeed, feeds(room)[0]!, { ...values }).facts
    expect(facts({ leftPerMl: 0 })[0]).toEqual({
      kind: 'count',
      subjectId: batch.id,
      data: { of: 'prey_artemia', animals: [0], volumeMl: 1000 },
    })
    expect(facts({ animals: 15_000 })[0]).toMatchObject({ kind: 'feeding', data: { animals: 15_000 } })
  })
})
