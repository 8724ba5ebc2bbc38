import { describe, expect, test } from 'vitest'
import { SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { larvalWean } from './larval-wean.ts'

const date = '2026-03-10'
const tooLittle = 'Too little for a scale: weigh {ten} once, which is ten such feeds, to see how little one is.'
const watched = 'Watch whether they take it or spit it out. Siphon what sinks within the hour.'

type Given = { species?: string; hatchedOn?: string; larvae?: number; isAll?: boolean }

/** What is offered by itself at the first feed of the day. */
function offered({ species = 'amphiprion-ocellaris', hatchedOn = '2026-03-04', larvae, isAll = false }: Given = {}) {
  const room = new SnapshotBuilder()
  room.setting('larval-artemia-feed', { isOn: false })
  const batch = room.batch({ species, hatchedOn, ...(larvae === undefined ? {} : { larvae }) })
  const said = { food: 'dry' as const, note: 'Nearly all take it.' }
  if (isAll) room.fact('feeding', batch.id, '2026-02-20T07:10:00.000Z', said)
  const [draft] = room.drafts(date, [larvalWean]).drafts
  if (!draft) throw new Error('Nothing is offered')
  const steps = draft.content.steps.map(({ text, quantities }) => [
    text,
    ...Object.values(quantities).map((quantity) => quantity?.value),
  ])
  const most = draft.content.because.find(({ label }) => label === 'a feed at the most')
  return { draft, steps, mostG: most?.quantity?.value }
}
const dusted = 'Up to {feed} of fine food, dusted on before the live food, while they are hungry.'

describe('dry food beside live food', () => {
  // Day 5: 4.3 + 5 x 8.7 / 25 = 6.04 mm; 0.1 x (6.04 / 16) ^ 2.895 = 0.006 g; of 200 a tenth in two feeds is 0.06 g.
  test('too little for a scale is told to a hundredth of a gram, and ten times it can be weighed once', () => {
    expect(offered({ larvae: 200 })).toMatchObject({
      steps: [[dusted, 0.06], [tooLittle, 0.6], [watched]],
      mostG: 0.06,
    })
  })

  test('is never told as nothing: three larvae get a hundredth of a gram at the most', () => {
    expect(offered({ larvae: 3 }).steps.slice(0, 2)).toEqual([
      [dusted, 0.01],
      [tooLittle, 0.1],
    ])
  })

  // 900 x 0.006 x 0.1 / 2 = 0.27 g.
  test('is told as a scale shows it from a tenth of a gram on', () => {
    expect(offered({ larvae: 900 })).toMatchObject({ steps: [[dusted, 0.3], [watched]], mostG: 0.3 })
  })

  test('of larvae that nobody numbered is what is gone in two minutes', () => {
    const { steps, mostG } = offered()
    expect(steps).toEqual([
      ['A dusting of fine food before the live food, while they are hungry: what is gone in two minutes.'],
      [watched],
    ])
    expect(mostG).toBeUndefined()
  })
})

// Seahorses are offered frozen food from day 56 on.
describe('frozen food beside live food', () => {
  const seahorse = { species: 'hippocampus-erectus', hatchedOn: '2026-01-10' }
  const thawed = 'Thaw it in tank water, pour the juice away, rinse and drain it; cut it to the size of their mouths.'

  test('is thawed first, and drained as it is weighed', () => {
    const [first, second, ...others] = offered({ ...seahorse, larvae: 60 }).steps
    expect([first, second?.[0], others]).toEqual([
      [thawed],
      'Up to {feed} of it, drained, let drift past them before the live food, while they are hungry.',
      [[watched]],
    ])
  })

  test('of young that nobody numbered is what is gone in ten minutes', () => {
    expect(offered(seahorse).steps).toEqual([
      [thawed],
      ['A little of it let drift past them before the live food, while they are hungry: what is gone in ten minutes.'],
      [watched],
    ])
  })
})

describe('once it is all that they eat', () => {
  test('they are fed as juveniles are, and whoever hangs back gets Artemia again', () => {
    // Day 31, 15.4 mm and 0.09 g: of four a tenth in three feeds is 0.012 g.
    const { steps, draft } = offered({ hatchedOn: '2026-02-06', larvae: 4, isAll: true })
    expect(steps).toEqual([
      ['A little at a time, over the whole surface, so that the small ones get theirs.'],
      ['All gone in two minutes, or it was too much: siphon the rest.'],
      [tooLittle, 0.1],
      ['Any that hang back with empty bellies: say that only some take it, and they get Artemia again.'],
    ])
    expect(draft.content.amount).toBeNull()
    expect(signOff(larvalWean, draft).facts[0]?.data).toEqual({ food: 'dry' })
  })

  test('why says what they are weaned to and from when on, with who found it', () => {
    const { because } = offered({ larvae: 900 }).draft.content
    expect(because.map(({ label, quantity, text, joins }) => [label, quantity?.value ?? text, joins])).toEqual([
      ['weaned to', 'dry food', null],
      ['old at the first dry food', 5, 'and'],
      ['old when dry food is all', 25, 'and'],
      ['a feed at the most', 0.3, 'and'],
      [expect.any(String), expect.any(Number), 'and'],
    ])
  })

  test('the last answer holds: hardly any, some, or nearly all take it', () => {
    const { draft } = offered({ larvae: 200 })
    const noted = (taken?: string) => signOff(larvalWean, draft, { taken }).facts[0]?.data
    expect(['none', 'some', 'all', undefined].map(noted)).toEqual([
      { food: 'dry', note: 'Hardly any take it.' },
      { food: 'dry', note: 'Some take it.' },
      { food: 'dry', note: 'Nearly all take it.' },
      { food: 'dry' },
    ])
  })
})
