import type { CareKind, Phrase, TaskField } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import type { TaskDraft } from '../../engine/draft-day.ts'
import { SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { rules } from '../index.ts'

const asking = rules.filter(({ subject }) => ['pair', 'clutch', 'larval_batch'].includes(subject))

type Kind = readonly [species: string, isIn: CareKind]
const seahorse: Kind = ['hippocampus-erectus', 'pouch']
const cardinalfish: Kind = ['pterapogon-kauderni', 'mouth']
const clownfish: Kind = ['amphiprion-ocellaris', 'nest']

/** All that a card says but why. */
function saidBy({ content: { title, steps, fields } }: TaskDraft): string {
  const phraseText = ({ text }: Phrase) => text
  const fieldText = (field: TaskField) =>
    [field.label, field.help ?? '', ...('choices' in field ? field.choices.map(({ label }) => label) : [])].join(' ')
  return [JSON.stringify(title), ...steps.map(phraseText), ...fields.map(fieldText)].join('\n')
}

/** What a room is asked of a pair, its brood and the young of one before, from laying until they are weaned. */
function cardsOf([species, isIn]: Kind): { ruleId: string; said: string }[] {
  const room = new SnapshotBuilder()
  const tank = room.tank({ kind: 'larval' })
  room.tank({ kind: 'larval' })
  room.tank({ kind: 'grow_out', volumeL: 400 })
  const pair = room.pair({ species })
  const clutch = room.clutch(pair, { spawnedAt: '2026-03-01T11:00:00.000Z', care: isIn, intent: 'undecided' })
  const batch = room.batch({ species, tankId: tank.id, hatchedOn: '2026-03-01', larvae: 60 })
  const own = new Set([pair.id, clutch.id, batch.id])
  return Array.from({ length: 80 }, (_, index) => new Date(Date.UTC(2026, 2, 2 + index)).toISOString().slice(0, 10))
    .flatMap((date) => room.drafts(date, asking).drafts)
    .filter(({ subjectId }) => own.has(subjectId))
    .map((draft) => ({ ruleId: draft.ruleId, said: saidBy(draft) }))
}

describe.each([seahorse, cardinalfish])('a brood of %s in a %s', (...kind) => {
  const cards = cardsOf(kind)

  test('is asked about on every kind of card', () => {
    const asked = new Set(cards.map(({ ruleId }) => ruleId))
    for (const ruleId of ['clutch-look', 'clutch-decide', 'clutch-morning-after', 'larval-artemia-feed', 'larval-wean'])
      expect(asked).toContain(ruleId)
    for (const ruleId of ['larval-head-count', 'larval-water-change', 'larval-move', 'pair-feed'])
      expect(asked).toContain(ruleId)
  })

  test('is nowhere told in words of a nest or of larvae', () => {
    const wrong = /\blarvae?\b|rotifer|barred|green water|\bthe nest|schooling|mouth or pouch/i
    expect(new Set(cards.flatMap(({ said }) => said.split('\n').filter((line) => wrong.test(line))))).toEqual(new Set())
  })
})

test('what is looked for in a pouch, and in the young of it, is not what is looked for in a mouth', () => {
  const [ofPouch, ofMouth, ofNest] = [seahorse, cardinalfish, clownfish].map((kind) =>
    cardsOf(kind)
      .map(({ said }) => said)
      .join('\n'),
  )
  expect(ofPouch).toMatch(/Pouch still full/)
  expect(ofPouch).toMatch(/holding on by the tail/)
  expect(ofPouch).not.toMatch(/Mouth still full|torn fins/)
  expect(ofMouth).toMatch(/Mouth still full/)
  expect(ofMouth).not.toMatch(/Pouch still full|holding on by the tail/)
  expect(ofNest).toMatch(/Barred and settled/)
})
