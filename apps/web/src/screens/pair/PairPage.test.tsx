import { PairSchema } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, newId, quietHandOver } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { PairPage } from './PairPage.tsx'

async function open(eggLookLacks: string[]) {
  const pair = PairSchema.parse({
    ...{ id: newId(), name: 'Dragonets', species: 'other-1f-synchiropus-splendidus', tankId: newId() },
    ...{ eggLookLacks, endedAt: null, version: 1 },
  })
  const none = () => []
  answerApi({
    ...{ listPairs: () => [pair], listTanks: none, listCultures: none, listClutches: none, listLarvalBatches: none },
    ...{ listJuvenileGroups: none, listPhotos: none, listSpecies: none, getHandOver: () => quietHandOver },
    listFacts: () => ({ facts: [], nextBefore: null }),
  })
  renderInRoom(<PairPage />, { room: makeRoom(), id: pair.id })
  await screen.findByText('Nothing yet.', { exact: false })
  await screen.findByText('No eggs recorded yet.', { exact: false })
}

test('of a pair whose eggs float says that they are not looked for, why, and what would change it', async () => {
  await open(['larval_tank'])
  expect(screen.getByText('Eggs are not looked for now.')).toBeTruthy()
  expect(screen.getByText(/^Every larval tank holds larvae/)).toBeTruthy()
  expect(screen.getByText(/^They are looked for again once a larval tank is emptied or added\./)).toBeTruthy()
})

test('has no nest site where eggs float', async () => {
  await open([])
  expect(screen.queryByText('Nest site')).toBeNull()
})

test('says nothing of it where the list looks for them', async () => {
  await open([])
  expect(screen.queryByText(/looked for/)).toBeNull()
})
