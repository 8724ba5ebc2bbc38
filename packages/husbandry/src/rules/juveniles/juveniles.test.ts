import { describe, expect, test } from 'vitest'
import { growthOf, lengthMmAt, ownMm, usualLengthsMm, weightGOf } from '../../species/juvenile-growth.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { juvenileCount } from './juvenile-count.ts'
import { juvenileFeed } from './juvenile-feed.ts'
import { juvenilePlace } from './juvenile-place.ts'

const date = '2026-03-10'

describe('growth', () => {
  test('is as published: 13 mm at 25 days, 18.9 at 40; 23 mm weigh about the 0.27 g that were weighed', () => {
    const clownfish = growthOf('amphiprion-ocellaris')
    expect([0, 25, 40].map((age) => lengthMmAt(clownfish, age))).toEqual([4.3, 13, 18.9])
    // Cheng et al. 2015 (F099), Raheem et al. (F100); Pietoyo et al. 2020-21 (F157); WAS abstract 42193 (F115).
    expect(weightGOf(clownfish, 23)).toBeCloseTo(0.27, 1)
    expect([16, 43].map((mm) => Number(weightGOf(clownfish, mm).toFixed(2)))).toEqual([0.1, 1.75])
    // 37.9 mm at 70 days in A. melanopus (F104) is the fast end, 3-4 cm at 2-4 months in A. clarkii (F158) is usual.
    expect(usualLengthsMm(clownfish, 70).to).toBeCloseTo(37.9)
    expect(lengthMmAt(clownfish, 90)).toBeGreaterThanOrEqual(30)
    expect(lengthMmAt(clownfish, 90)).toBeLessThanOrEqual(40)
  })

  test('of a seahorse is its own: 63 mm at nine weeks, and lighter for its length', () => {
    const seahorse = growthOf('hippocampus-erectus')
    expect(lengthMmAt(seahorse, 63)).toBe(63.2)
    // W = 0.0034 L^2.5535 at 6.32 cm (F191, Lin et al. 2008); weaned at 0.54-0.70 g and 6.59-7.46 cm (Lin et al. 2009, abstract).
    expect(weightGOf(seahorse, 63.2)).toBeCloseTo(0.0034 * 6.32 ** 2.5535, 6)
    expect(weightGOf(seahorse, 74.6)).toBeGreaterThan(0.54)
    expect(weightGOf(seahorse, 74.6)).toBeLessThan(0.7)
    // Those that others placed at 2.5 cm as clownfish are 6 cm as seahorses.
    expect(ownMm(seahorse, 25)).toBeGreaterThan(55)
    expect(ownMm(seahorse, 25)).toBeLessThan(70)
    expect(ownMm(growthOf('amphiprion-ocellaris'), 25)).toBeCloseTo(25)
  })
})

describe('feeding', () => {
  test('a tenth of their weight a day while small, in as many lit rounds as there are: 100 of 40 days', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-01-28' })
    const group = room.group({ settledOn: '2026-02-20', number: 100, fromBatchId: batch.id })
    const { drafts } = room.drafts(date, [juvenileFeed])
    // 18.9 mm weigh 0.162 g: 100 x 0.162 x 0.1 / 3 = 0.54 g.
    expect(drafts.map(({ roundId, content }) => [roundId, content.amount?.value])).toEqual([
      ['morning', 0.5],
      ['midday', 0.5],
      ['evening', 0.5],
    ])
    expect(signOff(juvenileFeed, drafts[0]!).facts).toEqual([
      { kind: 'feeding', subjectId: group.id, data: { food: 'dry', amountG: 0.5 } },
    ])
    room.snapshot.room.lightsOffAt = '18:00'
    expect(room.drafts(date, [juvenileFeed]).drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'midday'])
  })

  test('they are as old as their batch, whether or not its page has been closed since', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-01-05' })
    room.group({ settledOn: '2026-03-01', number: 100, fromBatchId: batch.id })
    const before = room.drafts(date, [juvenileFeed]).drafts.map(({ content }) => content.amount?.value)
    room.snapshot.batches = []
    expect(room.drafts(date, [juvenileFeed]).drafts.map(({ content }) => content.amount?.value)).toEqual(before)
  })

  test('a twentieth in two feeds once they are as long as a pair; never fewer grams for a longer fish', () => {
    const room = new SnapshotBuilder()
    const group = room.group({ settledOn: '2025-06-01', number: 10 })
    const grams = (lengthMm: number) => {
      room.fact('count', group.id, `${date}T06:00:00.000Z`, { of: 'juveniles', animals: [100], lengthMm })
      return room
        .drafts(date, [juvenileFeed])
        .drafts.reduce((sum, { content }) => sum + (content.amount?.value ?? 0), 0)
    }
    // 50 mm weigh 2.71 g: 100 x 2.71 x 0.05 = 13.6 g.
    expect(grams(50)).toBeCloseTo(13.6, 1)
    const days = [12, 16, 20, 24, 26, 30, 36, 42, 50, 60].map(grams)
    expect(days).toEqual([...days].sort((a, b) => a - b))
  })

  test('groups that share a tank are fed in one task, and each has its part in its book', () => {
    const room = new SnapshotBuilder()
    const elder = room.group({ settledOn: '2026-02-10', number: 60 })
    const younger = room.group({ settledOn: '2026-03-01', number: 60, tankId: elder.tankId })
    const { drafts } = room.drafts(date, [juvenileFeed])
    expect(drafts.map(({ subjectId }) => subjectId)).toEqual([elder.id, elder.id, elder.id])
    expect(saidTitle(drafts[0])).toContain('for Group 2 too')
    const { facts } = signOff(juvenileFeed, drafts[0]!)
    expect(facts.map(({ subjectId }) => subjectId)).toEqual([elder.id, younger.id])
    const given = facts.map((fact) => (fact.kind === 'feeding' ? (fact.data.amountG ?? 0) : 0))
    expect(given[0]! + given[1]!).toBeCloseTo(drafts[0]?.content.amount?.value ?? 0, 2)
    expect(given[0]).toBeGreaterThan(given[1]!)
  })

  test('too little for a scale is a pinch, and a week of pinches is said in grams', () => {
    const room = new SnapshotBuilder()
    room.group({ settledOn: date, number: 12 })
    const [draft] = room.drafts(date, [juvenileFeed]).drafts
    expect(saidTitle(draft)).toContain('A pinch')
    expect(draft?.content.steps[0]?.quantities.week?.unit).toBe('g')
  })
})

describe('counting and grading', () => {
  test('every fortnight, a crowded tank is said to be, and a length is kept with the count', () => {
    const room = new SnapshotBuilder()
    const tank = room.tank({ kind: 'grow_out', volumeL: 100 })
    const group = room.group({ settledOn: '2026-02-24', number: 80, tankId: tank.id })
    expect(room.drafts('2026-03-09', [juvenileCount]).drafts).toEqual([])
    const draft = onlyDraft(room.drafts(date, [juvenileCount]))
    // 0.5 a litre in 100 L is 50.
    expect(draft.content.steps.find(({ quantities }) => quantities.most)?.quantities.most?.value).toBe(50)
    expect(signOff(juvenileCount, draft, { number: 78, lengthMm: 9 }).facts).toEqual([
      { kind: 'count', subjectId: group.id, data: { of: 'juveniles', animals: [78], lengthMm: 9 } },
    ])
    for (const fact of signOff(juvenileCount, draft, { number: 78, lengthMm: 9 }).facts)
      room.append(fact, { at: `${date}T12:40:00.000Z` })
    const next = onlyDraft(room.drafts('2026-03-24', [juvenileCount]))
    expect(next.content.steps.map(({ text }) => text).join(' ')).toContain('small for their age')
  })
})

describe('placing', () => {
  test('is asked about from 25 mm on, once a fortnight, and written down as placed', () => {
    const room = new SnapshotBuilder()
    const group = room.group({ settledOn: '2026-01-20', number: 40 })
    room.fact('count', group.id, '2026-03-08T12:00:00.000Z', { of: 'juveniles', animals: [40], lengthMm: 22 })
    expect(room.drafts('2026-03-09', [juvenilePlace]).drafts).toEqual([])
    room.fact('count', group.id, '2026-03-09T12:00:00.000Z', { of: 'juveniles', animals: [40], lengthMm: 27 })
    const draft = onlyDraft(room.drafts(date, [juvenilePlace]))
    expect(draft.isForStandIn).toBe(false)
    expect(draft.content.steps.map(({ text }) => text).join(' ')).toMatch(/take dry food.*unfed for.*Count them.*whom/)
    const { facts } = signOff(juvenilePlace, draft, { placed: 12, note: 'the shop by the harbour' })
    expect(facts).toEqual([
      { kind: 'care', subjectId: group.id, data: { act: 'looked_to_place' } },
      {
        kind: 'outcome',
        subjectId: group.id,
        data: { outcome: 'placed', number: 12, note: 'the shop by the harbour' },
      },
    ])
    for (const fact of facts) room.append(fact, { at: `${date}T12:40:00.000Z` })
    expect(room.drafts('2026-03-23', [juvenilePlace]).drafts).toEqual([])
    expect(room.drafts('2026-03-24', [juvenilePlace]).drafts).toHaveLength(1)
  })
})
