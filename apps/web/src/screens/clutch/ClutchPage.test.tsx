import { type CareKind, type Clutch, ClutchSchema, type Fact } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { keepFact, makeRoom, newId, quietHandOver } from '@/testing/made-up.ts'
import { makeLife } from '@/testing/made-up-life.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { ClutchPage } from './ClutchPage.tsx'

beAsWideAs(390)

const species: Record<CareKind, string> = {
  nest: 'amphiprion-ocellaris',
  mouth: 'pterapogon-kauderni',
  pouch: 'hippocampus-erectus',
  pelagic: 'other-1f-synchiropus-splendidus',
}
const clutchOf = (care: CareKind, state: Clutch['state']): Clutch =>
  ClutchSchema.parse({
    ...{ id: newId(), name: 'C1', pairId: newId(), tankId: newId(), species: species[care], care, state, version: 1 },
    ...{ intent: 'raise_all', spawnedAt: '2026-03-01T10:00:00.000Z', eggs: 45, ageDays: 9 },
    nights: [{ date: '2026-03-12', probability: 0.4 }],
  })

function factsOf({ id: subjectId }: Clutch): Fact[] {
  const fact = (kind: Fact['kind'], data: object, at: string): Fact => ({
    ...keepFact({ kind: 'care', subjectId, at, data: { act: 'check_light' } } as never),
    ...({ kind, data, subjectKind: 'clutch' } as object),
  })
  return [
    fact('hatch', { hatchedOn: '2026-03-11', larvae: 40 }, '2026-03-12T07:00:00.000Z'),
    fact('observation', { signs: ['eggs_seen'] }, '2026-03-11T07:00:00.000Z'),
    fact('loss', { number: 1, of: 'larvae' }, '2026-03-10T07:00:00.000Z'),
    fact('spawning', { eggs: 45 }, '2026-03-01T10:00:00.000Z'),
  ]
}

/** The whole page, with its history, its life and a form for what was seen, as text. */
async function textOf(care: CareKind, state: Clutch['state']): Promise<string> {
  const clutch = clutchOf(care, state)
  const life = makeLife({ care, species: clutch.species, clutches: [{ id: clutch.id, kind: 'clutch', name: 'C1' }] })
  const none = () => []
  answerApi({
    ...{ listClutches: () => [clutch], listTanks: none, listCultures: none, listPairs: none, listLarvalBatches: none },
    ...{ listJuvenileGroups: none, listPhotos: none, getHandOver: () => quietHandOver, getClutchLife: () => life },
    listFacts: () => ({ facts: factsOf(clutch), nextBefore: null }),
  })
  const { user, leave } = renderInRoom(<ClutchPage />, { room: makeRoom(), id: clutch.id })
  await user.click(await screen.findByRole('button', { name: 'Something seen' }))
  await screen.findByRole('group', { name: 'Signs' })
  await waitFor(() => screen.getByRole('img', { name: /^Life line/ }))
  await screen.findByText(/night of/)
  const labels = [...document.body.querySelectorAll('[aria-label]')].map((each) => each.getAttribute('aria-label'))
  const text = [document.body.textContent, ...labels].join('\n')
  leave()
  return text
}

describe('the page of a clutch', () => {
  it.each(['mouth', 'pouch'] as const)('that a parent carries in a %s has no word of a nest', async (care) => {
    const wrong = /.{0,30}(hatch|larva|\beggs?\b|\bnest\b|\blaid\b|settled|metamorphosis).{0,30}/gi
    const there = await textOf(care, 'incubating')
    expect(there.match(wrong)).toBeNull()
    expect(there).toMatch(/Carried in a (mouth|pouch)/)
    expect(there).toMatch(/Carried since.*Broodabout 45/)
    expect(there).toContain('They are out: record the young')
    expect(there).toContain('Release 40 young, night of Wed 11 Mar')
    expect(there).toMatch(/Seen still carrying/)
    expect(there).toContain('Loss 1 young')
    const out = await textOf(care, 'hatched')
    expect(out.match(wrong)).toBeNull()
    expect(out).toContain('Released')
    expect(out).toContain('not yet: in grow-out')
  })

  it('that lies in a nest is told in words of one', async () => {
    const there = await textOf('nest', 'incubating')
    for (const said of ['Eggs in the nest', 'Eggs laid', 'It hatched: record the larvae', 'Hatch 40 larvae', '1 larva'])
      expect(there).toContain(said)
    expect(there).toContain('Colour of the eggs')
    expect(there).not.toMatch(/carried|released/i)
  })

  it('that floats has eggs and larvae, and no nest', async () => {
    const there = await textOf('pelagic', 'incubating')
    expect(there).toContain('Eggs floating in open water')
    expect(there).toContain('It hatched: record the larvae')
    expect(there).not.toMatch(/in the nest|released/i)
  })
})
