import { expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { chilledReserveRule } from '../live-food/chilled-reserve.ts'
import { larvalChilledFeed } from './larval-chilled-feed.ts'

const date = '2026-03-10'

/** Two jars of 2 L at 240 per mL, of 3 and of 8 March: 305,470 and 391,280 alive by the 10th. */
function withJars(chilled: number) {
  const room = new SnapshotBuilder()
  const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
  for (const on of ['2026-03-03', '2026-03-08']) {
    room.count(culture, `${on}T06:30:00.000Z`, [240, 240, 240])
    room.fact('harvest', culture.id, `${on}T08:00:00.000Z`, {
      volumeL: 2,
      parts: [{ to: 'chilled_reserve', volumeL: 2 }],
    })
  }
  const batch = room.batch({ hatchedOn: '2026-03-08', larvae: 300 })
  const batches = [{ batchId: batch.id, share: 1, from: [], chilled }]
  room.snapshot.foodPlan = { madeAt: `${date}T06:50:00.000Z`, days: [{ date, batches, cultures: [] }] }
  return { room, culture, batch, drafts: (on = date) => room.drafts(on, [larvalChilledFeed]).drafts }
}

test('what the plan takes of the reserve is fed, the oldest jar first', () => {
  const { room, culture, batch, drafts } = withJars(400_000)
  expect(drafts().map(saidTitle)).toEqual([
    'All that is left in the jar of R1 chilled on 3 Mar, 310,000 rotifers',
    '24% of the jar of R1 chilled on 8 Mar, 95,000 rotifers',
  ])
  const [first, second] = drafts()
  const sieved = [first, second].map((draft) => draft?.content.steps[1])
  expect(sieved.map((step) => step?.text.split(',')[0])).toEqual(['Sieve all of it', 'Sieve {part} of it'])
  expect(first?.content.because[0]?.origin).toMatchObject({ kind: 'food_plan' })
  expect(signOff(larvalChilledFeed, second!, { swim: 'most' }).facts).toEqual([
    {
      kind: 'feeding',
      subjectId: batch.id,
      data: { food: 'rotifers', fromCultureId: culture.id, animals: 94_530, isChilled: true },
    },
  ])
  for (const fact of signOff(larvalChilledFeed, first!, { swim: 'most', animals: 300_000 }).facts)
    room.append(fact, { at: `${date}T07:20:00.000Z` })
  expect(drafts()).toEqual([])
})

test('a jar that was emptied is not discarded once it is too old', () => {
  const { room, drafts } = withJars(400_000)
  const [first] = drafts()
  expect(room.drafts('2026-03-17', [chilledReserveRule]).drafts).toHaveLength(1)
  for (const fact of signOff(larvalChilledFeed, first!, { swim: 'most' }).facts)
    room.append(fact, { at: `${date}T07:20:00.000Z` })
  expect(room.drafts('2026-03-17', [chilledReserveRule]).drafts).toEqual([])
  expect(room.drafts('2026-03-22', [chilledReserveRule]).drafts).toHaveLength(1)
})

test('a jar in which few swim goes down the drain, and another is asked', () => {
  const { room, drafts } = withJars(100_000)
  const [fact] = signOff(larvalChilledFeed, onlyDraft({ drafts: drafts(), gaps: [] }), { swim: 'few' }).facts
  expect(fact).toMatchObject({ kind: 'care', data: { act: 'discard_reserve', litres: 2, forDate: '2026-03-03' } })
  room.append(fact!, { at: `${date}T07:20:00.000Z` })
  expect(drafts().map(saidTitle)).toEqual(['26% of the jar of R1 chilled on 8 Mar, 100,000 rotifers'])
})

test('for less than a hundredth of a jar none is opened', () => {
  expect(withJars(1_000).drafts()).toEqual([])
  expect(withJars(306_000).drafts().map(saidTitle)).toEqual([
    'All that is left in the jar of R1 chilled on 3 Mar, 310,000 rotifers',
  ])
})

test('without a word in the plan nothing is taken out of the cold', () => {
  expect(withJars(0).drafts()).toEqual([])
  const { room, drafts } = withJars(100_000)
  room.snapshot.foodPlan = null
  expect(drafts()).toEqual([])
})
