import { type LarvalBatch, LarvalBatchSchema } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, newId, quietHandOver } from '@/testing/made-up.ts'
import { makeLife } from '@/testing/made-up-life.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { BatchPage } from './BatchPage.tsx'

beAsWideAs(390)

async function open(part: Pick<LarvalBatch, 'species' | 'care'>) {
  const batch = LarvalBatchSchema.parse({
    ...{ id: newId(), name: 'B1', tankId: newId(), clutchIds: [newId()], hatchedOn: '2026-03-11', ageDays: 3 },
    ...{ numberNow: { estimate: 40, lower: null, upper: null }, note: '', endedAt: null, version: 1, ...part },
  })
  const none = () => []
  answerApi({
    ...{ listLarvalBatches: () => [batch], listTanks: none, listCultures: none, listPairs: none, listClutches: none },
    ...{ listJuvenileGroups: none, listPhotos: none, listFeedLinks: none, listFeedsToday: none, listRules: none },
    ...{ listSpecies: none, getHandOver: () => quietHandOver, getClutchLife: () => makeLife(part) },
    listFacts: () => ({ facts: [], nextBefore: null }),
  })
  renderInRoom(<BatchPage />, { room: makeRoom(), id: batch.id })
  await waitFor(() => screen.getByRole('img', { name: /^Life line/ }))
  await screen.findByText(/^No prey was counted/)
  return document.body.textContent
}

test('of young that a parent let go the page tells their number and the night of their release', async () => {
  const said = await open({ species: 'pterapogon-kauderni', care: 'mouth' })
  expect(said).toContain('Young nowabout 40')
  expect(said).toContain('Night of releaseWed 11 Mar')
  expect(said).toContain('Released: 60')
  expect(said).not.toMatch(/hatch|larvae|settled/i)
})

test('of larvae it tells the night of their hatch', async () => {
  const said = await open({ species: 'amphiprion-ocellaris', care: 'nest' })
  expect(said).toContain('Larvae nowabout 40')
  expect(said).toContain('Hatch nightWed 11 Mar')
})
