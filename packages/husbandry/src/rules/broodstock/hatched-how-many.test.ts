import type { TaskField } from '@fryward/shared'
import { expect, test } from 'vitest'
import { checkValues } from '../../engine/check-values.ts'
import { onlyDraft, SnapshotBuilder } from '../../testing/snapshot-builder.ts'
import { clutchMorningAfter } from './clutch-morning-after.ts'

/** What the morning after the likeliest night asks of a clutch of so many eggs, at 27 C. */
function asked({ eggs }: { eggs?: number } = {}) {
  const room = new SnapshotBuilder()
  const pair = room.pair({
    species: 'amphiprion-ocellaris',
    tankId: room.tank({ kind: 'broodstock', temperatureC: 27 }).id,
  })
  const spawnedAt = '2026-03-03T10:00:00.000Z'
  room.clutch(pair, { spawnedAt, intent: 'raise_all', ...(eggs === undefined ? {} : { eggs }) })
  room.tank({ name: 'Nursery 1' })
  const { fields } = onlyDraft(room.drafts('2026-03-11', [clutchMorningAfter])).content
  const named = (name: string): TaskField => fields.find((field) => field.name === name)!
  const becomes = (larvae: number) => {
    const values = { ...Object.fromEntries(fields.map((field) => [field.name, undefined])), hatched: 'part', larvae }
    const { problems, improbable } = checkValues({ fields, values, confirmed: [] })
    const of = ({ path }: { path: string }) => path.endsWith('larvae')
    return problems.some(of) ? 'refused' : improbable.some(of) ? 'asked' : 'kept'
  }
  return { hatched: named('hatched'), larvae: named('larvae'), becomes }
}

test('whether any hatched has to be said: none, a part, or all', () => {
  const { hatched } = asked({ eggs: 400 })
  expect(hatched).toMatchObject({ isRequired: true })
  expect('choices' in hatched && hatched.choices.map(({ value, label }) => [value, label])).toEqual([
    ['none', 'none'],
    ['part', 'a part'],
    ['all', 'all, or nearly'],
  ])
})

test('more larvae than eggs are asked about, and what no clutch has is refused', () => {
  const { larvae, becomes } = asked({ eggs: 400 })
  expect([0, 1, 400, 401, 100_000, 100_001, -1].map(becomes)).toEqual([
    ...['asked', 'kept', 'kept', 'asked', 'asked', 'refused', 'refused'],
  ])
  expect(larvae).toMatchObject({ help: 'Of 400 eggs by the book.', usual: null, step: 10 })
  expect(asked({ eggs: 1 }).becomes(1)).toBe('kept')
  expect(asked({ eggs: 1 }).becomes(2)).toBe('asked')
})

test('where nobody counted the eggs, the most of its kind speaks', () => {
  const { larvae, becomes } = asked()
  // Some hundred to a thousand eggs a clutch in A. ocellaris (common practice).
  expect([1, 100, 20_000].map(becomes)).toEqual(['kept', 'kept', 'asked'])
  expect(larvae).toMatchObject({ help: null, step: 10 })
})

test('a few are counted one by one', () => {
  expect([99, 100].map((eggs) => asked({ eggs }).larvae)).toMatchObject([{ step: 1 }, { step: 10 }])
})
