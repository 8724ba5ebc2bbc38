import type { FeedLink, FeedToday, LarvalBatch } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeCulture, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { FeedLinks } from './FeedLinks.tsx'

const r1 = makeCulture({ id: newId(), name: 'R1' })
const cone = makeCulture({ id: newId(), name: 'Cone 1', kind: 'artemia_hatch', strain: null })
const batchOf = (name: string): LarvalBatch => ({
  ...{
    id: newId(),
    name,
    species: 'amphiprion-ocellaris',
    care: 'nest',
    tankId: newId(),
    clutchIds: [],
    hatchedOn: '2026-11-20',
  },
  ...{ ageDays: 8, numberNow: null, note: '', endedAt: null, version: 1 },
})
const [young, old] = [batchOf('Young'), batchOf('Old')]
const link = (batchId: string): FeedLink => ({
  ...{ id: newId(), batchId, cultureId: r1.id, fromOn: '2026-11-20', untilOn: null, version: 1 },
})
const today: FeedToday[] = [
  { batchId: young.id, cultureId: r1.id, food: 'rotifers' },
  { batchId: young.id, cultureId: cone.id, food: 'artemia' },
  { batchId: old.id, cultureId: cone.id, food: 'artemia' },
]

function open(of: { batchId: string } | { cultureId: string }) {
  answerApi({
    ...{ listTanks: () => [], listPairs: () => [], listClutches: () => [], listJuvenileGroups: () => [] },
    ...{ listCultures: () => [r1, cone], listLarvalBatches: () => [young, old] },
    ...{ listFeedLinks: () => [link(young.id), link(old.id)], listFeedsToday: () => today },
  })
  renderInRoom(<FeedLinks of={of} isEnded={false} />)
}
const lines = async () => (await screen.findAllByRole('listitem')).map(({ textContent }) => textContent)

test('a cone that nobody is linked to says whom it feeds today', async () => {
  open({ cultureId: cone.id })
  expect(await lines()).toEqual(['Young today artemia', 'Old today artemia'])
})

test('a batch says what it eats today, and a link of which nothing is eaten today says that', async () => {
  open({ batchId: old.id })
  expect(await lines()).toEqual([
    'Cone 1 today artemia',
    expect.stringMatching(/^R1 linked from .*, nothing of it today/),
  ])
})

test('a link says beside its dates what is eaten of it today', async () => {
  open({ batchId: young.id })
  expect((await lines()).at(-1)).toMatch(/^R1 today rotifers; linked from /)
})
