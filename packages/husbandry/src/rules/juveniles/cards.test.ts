import { describe, expect, test } from 'vitest'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { juvenileCount } from './juvenile-count.ts'
import { juvenileFeed } from './juvenile-feed.ts'
import { juvenilePlace } from './juvenile-place.ts'

const date = '2026-03-10'
const feeds = (room: SnapshotBuilder) => room.drafts(date, [juvenileFeed]).drafts
const dry = [
  'A little at a time, over the whole surface, so that the small ones get theirs.',
  'All gone in two minutes, or it was too much: siphon the rest.',
]
const frozen = [
  'Thaw it in tank water, pour the juice away, rinse and drain it; cut it to the size of their mouths.',
  'A little at a time, let drift past all of them: they pick it up one by one.',
  'What still lies there after half an hour was too much: siphon it.',
]

describe('a feed of juveniles', () => {
  test('says whose weight it is a part of: 100 x 0.162 x 0.1 / 3', () => {
    const room = new SnapshotBuilder()
    const batch = room.batch({ hatchedOn: '2026-01-28' })
    room.group({ settledOn: '2026-02-20', number: 100, fromBatchId: batch.id })
    const [first] = feeds(room)
    expect([saidTitle(first), first?.content.amountOf]).toEqual(['0.5 g dry food, first feed', 'dry food'])
    expect(saidSteps(first)).toEqual(dry)
    // Two feeds of grown fish, more of small ones: as many as there are rounds in the light.
    expect(whyLines(first)).toEqual([
      ...['100 animals in Group 1 by the book', 'and 40 days old', 'and 19 mm long now, about'],
      'times 0.16 g one of that length weighs about',
      'times 0.1 share of their weight a day in dry food at that length',
      'and 0.1 share of their weight a day while small',
      ...['divided by 3 feeds that the rounds allow', 'equals 0.5 g a feed'],
    ])
  })

  test('of grown ones is by their last measure, a twentieth in two feeds', () => {
    const room = new SnapshotBuilder()
    const { id } = room.group({ settledOn: '2025-06-01', number: 10 })
    room.fact('count', id, '2026-03-09T06:00:00.000Z', { of: 'juveniles', animals: [10], lengthMm: 50 })
    const drafts = feeds(room)
    expect(drafts.map(({ roundId }) => roundId)).toEqual(['morning', 'evening'])
    // 10 x 2.7 x 0.05 / 2.
    expect(whyLines(drafts[0])).toEqual([
      ...['10 animals in Group 1 by the book', 'and 50 mm last measured', 'and 50 mm long now, about'],
      'times 2.7 g one of that length weighs about',
      'times 0.05 share of their weight a day in dry food at that length',
      'and 0.05 share of their weight a day once grown',
      ...['divided by 2 feeds a day', 'equals 0.7 g a feed'],
    ])
  })

  test('of two kinds is told apart, whose is whose, and the younger’s food is in the title', () => {
    const room = new SnapshotBuilder()
    const tankId = room.tank({ kind: 'grow_out' }).id
    room.group({ settledOn: '2026-01-10', tankId, number: 40 })
    room.group({ species: 'hippocampus-erectus', settledOn: '2026-02-20', tankId, number: 60 })
    const [first] = feeds(room)
    expect(saidTitle(first)).toBe('1.4 g dry food, 3.7 g frozen food, first feed, for Group 2 too')
    expect(saidSteps(first).filter((step) => !step.startsWith('For Group'))).toEqual([...dry, ...frozen])
    expect(first?.content.fields.map(({ label }) => label)).toEqual([
      ...['Dry food given', 'Frozen food given', 'Anything off?'],
    ])
    expect(whyLines(first).slice(-5)).toEqual([
      'and 0.05 share of their weight a day once grown',
      'and 0.1 share of their weight a day in frozen food, once grown',
      ...['divided by 2 feeds a day', 'equals 1.4 g a feed', 'equals 3.7 g a feed'],
    ])
  })

  test('of fish that nobody numbered is a pinch, and says that their number is not known', () => {
    const room = new SnapshotBuilder()
    const { id } = room.group({ settledOn: '2026-02-20' })
    const [first] = feeds(room)
    expect([saidTitle(first), first?.content.amountOf]).toEqual(['A pinch of dry food, first feed', null])
    expect(saidSteps(first)).toEqual(dry)
    expect(whyLines(first)[0]).toBe('how many Group 1 are not known')
    expect(whyLines(first).at(-1)).toBe('divided by 3 feeds that the rounds allow')
    expect(signOff(juvenileFeed, first!).facts).toEqual([{ kind: 'feeding', subjectId: id, data: { food: 'dry' } }])
  })

  test('too little for a scale is weighed by the week: 12 x 0.055 x 0.1 x 7', () => {
    const room = new SnapshotBuilder()
    room.group({ settledOn: date, number: 12 })
    const [first] = feeds(room)
    expect(saidSteps(first)[0]).toBe('How much a pinch is: 0.5 g weighed into a jar lasts them a week, 21 feeds.')
    const seahorses = new SnapshotBuilder()
    seahorses.group({ species: 'hippocampus-erectus', settledOn: '2026-03-09', number: 1 })
    // 0.47 x 0.191 x 7.
    expect(saidSteps(feeds(seahorses)[0])[0]).toBe(
      'How much a pinch is: 0.6 g of it, drained, lasts them a week, 14 feeds.',
    )
    // One clownfish: 0.04 g a week is nothing that a scale shows.
    const one = new SnapshotBuilder()
    one.group({ settledOn: date, number: 1 })
    expect(saidSteps(feeds(one)[0])).toEqual(dry)
  })

  test('of small ones in fewer than three rounds is said to be too seldom; two do for grown ones', () => {
    const oftener =
      'Fish this small do better on smaller feeds more often: one more round in the light, or a feeder, helps.'
    const told = (settledOn: string, rounds: number) => {
      const room = new SnapshotBuilder()
      room.group({ settledOn, number: 60 })
      room.snapshot.room.rounds = room.snapshot.room.rounds.slice(0, rounds)
      return saidSteps(feeds(room)[0]).includes(oftener)
    }
    expect([told('2026-03-01', 3), told('2026-03-01', 2), told('2025-09-01', 2), told('2025-09-01', 1)]).toEqual([
      ...[false, true, false, true],
    ])
  })

  test('is none for a group that the book says is gone, and signs that were seen stand beside it', () => {
    const room = new SnapshotBuilder()
    const { id } = room.group({ settledOn: '2026-02-20', number: 30 })
    const [first] = feeds(room)
    expect(signOff(juvenileFeed, first!, { signs: ['gasping'] }).facts[1]).toEqual({
      kind: 'observation',
      subjectId: id,
      data: { signs: ['gasping'] },
    })
    room.fact('count', id, '2026-03-09T09:00:00.000Z', { of: 'juveniles', animals: [0] })
    expect(feeds(room)).toEqual([])
  })

  test('of groups of which one has no number is shared alike in the book', () => {
    const room = new SnapshotBuilder()
    const tankId = room.tank({ kind: 'grow_out' }).id
    const groups = [
      room.group({ settledOn: '2026-01-10', tankId, number: 40 }),
      room.group({ settledOn: '2026-02-20', tankId }),
    ]
    const [first] = feeds(room)
    const { facts } = signOff(juvenileFeed, first!, { amountG: 2 })
    expect(facts).toEqual(
      groups.map(({ id }) => ({ kind: 'feeding', subjectId: id, data: { food: 'dry', amountG: 1 } })),
    )
  })
})

test('a feed that was kept by an older list is of its own group, and of dry food', () => {
  const room = new SnapshotBuilder()
  const { id } = room.group({ settledOn: '2026-02-20', number: 100 })
  const [first] = feeds(room)
  const facts = (values: object) => signOff(juvenileFeed, { ...first!, context: {} }, { ...values }).facts
  const planned = first?.content.amount?.value
  expect(facts({})).toEqual([{ kind: 'feeding', subjectId: id, data: { food: 'dry', amountG: planned } }])
  expect(facts({ amountG: 2 })).toMatchObject([{ data: { amountG: 2 } }])
})

describe('a count', () => {
  const counted = (given: { number?: number; volumeL?: number } = {}) => {
    const room = new SnapshotBuilder()
    const { number = 80, volumeL = 200 } = given
    const tank = room.tank({ name: 'G', kind: 'grow_out', volumeL })
    const group = room.group({ settledOn: '2026-02-24', number, tankId: tank.id })
    return { room, group, draft: () => onlyDraft(room.drafts(date, [juvenileCount])) }
  }

  test('says how long they usually are, and how many the tank holds only where there are more', () => {
    const { draft } = counted()
    expect([draft().roundId, saidTitle(draft())]).toEqual(['midday', 'Count and grade'])
    // 39 days: 12.7 to 23.1 mm between the slowest and the fastest that were published.
    const steps = [
      'Count them as they pass from one cup to another, twice.',
      'Hold five of them in a glass to a ruler, nose to tail: 13 mm to 23 mm is usual at their age.',
      'The largest third apart from the smallest third: the small ones grow when they are left alone.',
      'Sick or bent ones to a tank of their own, and written down.',
    ]
    expect(saidSteps(draft())).toEqual(steps)
    // Half a fish a litre: 80 in 160 L are no crowd, in 159 L they are.
    expect(saidSteps(counted({ volumeL: 160 }).draft())).toEqual(steps)
    expect(saidSteps(counted({ volumeL: 159 }).draft()).at(-2)).toBe('G holds 79 animals at most: move some on.')
    expect(whyLines(draft())).toEqual([
      ...['last counted', 'and 14 days from one count to the next', 'and usual at their age 13 to 23 mm'],
      ...['and 200 L in G', 'times 0.5 per_L at most'],
    ])
  })

  test('of fish that were small for their age when last measured says what helps; of others it does not', () => {
    const told = (lengthMm: number) => {
      const { room, group, draft } = counted()
      room.fact('count', group.id, '2026-02-24T12:00:00.000Z', { of: 'juveniles', animals: [80], lengthMm })
      return saidSteps(draft()).join(' ')
    }
    const small = 'They were small for their age when last measured'
    // Of 25 days: 9.7 mm are usual at the least, 13 in the middle; what is small stays so for a fortnight.
    expect([told(4), told(13)].map((steps) => steps.includes(small))).toEqual([true, false])
  })

  test('counts all that share the tank for a crowd', () => {
    const { room, group, draft } = counted({ number: 30, volumeL: 100 })
    expect(saidSteps(draft()).join()).not.toContain('at most')
    room.group({ settledOn: '2026-03-09', number: 30, tankId: group.tankId })
    expect(saidSteps(draft()).join()).toContain('G holds 50 animals at most')
  })

  test('of fish that were never counted goes from the day on which they settled', () => {
    const room = new SnapshotBuilder()
    room.group({ settledOn: '2026-02-24' })
    expect(room.drafts('2026-03-09', [juvenileCount]).drafts).toEqual([])
    expect(whyLines(onlyDraft(room.drafts(date, [juvenileCount])))[0]).toBe('settled 2026-02-24')
  })

  test('keeps what was measured, seen and noted, and a count of none ends the asking', () => {
    const { room, group, draft } = counted()
    const typed = { number: 77.6, lengthMm: 15, deformed: 3, note: 'two bent' }
    expect(signOff(juvenileCount, draft(), typed).facts).toEqual([
      { kind: 'count', subjectId: group.id, data: { of: 'juveniles', animals: [78], lengthMm: 15, deformed: 3 } },
      { kind: 'observation', subjectId: group.id, data: { note: 'two bent' } },
    ])
    room.fact('count', group.id, '2026-02-24T12:00:00.000Z', { of: 'juveniles', animals: [0] })
    expect(room.drafts(date, [juvenileCount]).drafts).toEqual([])
  })
})

describe('placing', () => {
  test('says from which length on, and how long they are by measure or by age', () => {
    const room = new SnapshotBuilder()
    const { id } = room.group({ settledOn: '2026-01-20', number: 40 })
    room.fact('count', id, '2026-03-09T12:00:00.000Z', { of: 'juveniles', animals: [40], lengthMm: 27 })
    const draft = onlyDraft(room.drafts(date, [juvenilePlace]))
    expect([draft.roundId, saidTitle(draft)]).toEqual(['midday', 'Look for fish that can be placed'])
    expect(saidSteps(draft).slice(0, 2)).toEqual([
      'Those that take dry food in front of you, are straight, whole and 25 mm or longer.',
      'Into a tank or a floating box of their own, unfed for 1 days before they travel.',
    ])
    expect(whyLines(draft)).toEqual([
      ...['last measured', 'and 27 mm now about', 'and 40 animals by the book'],
      ...['and 25 mm long at the least', 'and 14 days from one look to the next'],
    ])
    expect(draft.content.cautions.join(' ')).toContain('Never release')
    const never = new SnapshotBuilder()
    never.group({ settledOn: '2025-11-20' })
    // 135 days: 35 mm at 90, 49.6 at 180.
    expect(whyLines(onlyDraft(never.drafts(date, [juvenilePlace]))).slice(0, 3)).toEqual([
      ...['42 mm never measured; by age', 'and 42 mm now about', 'and 25 mm long at the least'],
    ])
  })

  test('of none keeps the note with the look, and a group that is gone is not asked about', () => {
    const room = new SnapshotBuilder()
    const { id } = room.group({ settledOn: '2025-11-20', number: 40 })
    const draft = onlyDraft(room.drafts(date, [juvenilePlace]))
    expect(signOff(juvenilePlace, draft, { placed: 0, note: 'all shy' }).facts).toEqual([
      { kind: 'care', subjectId: id, data: { act: 'looked_to_place', note: 'all shy' } },
    ])
    expect(signOff(juvenilePlace, draft, { placed: 2.6 }).facts[1]?.data).toEqual({ outcome: 'placed', number: 3 })
    room.fact('count', id, '2026-03-09T09:00:00.000Z', { of: 'juveniles', animals: [0] })
    expect(room.drafts(date, [juvenilePlace]).drafts).toEqual([])
  })
})
