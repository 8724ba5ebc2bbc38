import type { FactDraft } from '@fryward/husbandry'
import { type FactKind, factKinds, type SubjectKind, subjectKinds } from '@fryward/shared'
import { expect, test } from 'vitest'
import { arrivals, bookKinds, isDeparture, rulesOf } from './index.ts'

/** All that may be written about a thing, in the order of the alphabet. */
const writtenOf = (subject: SubjectKind) => factKinds.filter((kind) => rulesOf(kind).about.includes(subject)).sort()

test('of each thing may be written what can happen to it, and of no other', () => {
  // Seen, cared for, or chosen for all of it.
  expect(writtenOf('room')).toEqual(['care', 'cure', 'observation'])
  const ofWater = ['care', 'count', 'feeding', 'loss', 'observation', 'water_change', 'water_reading', 'water_test']
  expect(writtenOf('tank')).toEqual([...ofWater, 'treatment'].sort())
  expect(writtenOf('culture')).toEqual([...ofWater, 'harvest', 'inoculation'].sort())
  // Grown fish are fed, treated, lost or placed one by one; their eggs are a clutch's.
  expect(writtenOf('pair')).toEqual(['care', 'feeding', 'loss', 'observation', 'outcome', 'treatment'])
  const ofYoung = ['care', 'count', 'loss', 'observation', 'transfer']
  expect(writtenOf('clutch')).toEqual([...ofYoung, 'decision', 'hatch', 'spawning'].sort())
  const ofFry = [...ofYoung, 'feeding', 'outcome', 'treatment']
  expect(writtenOf('juvenile_group')).toEqual(ofFry.sort())
  expect(writtenOf('larval_batch')).toEqual([...ofFry, 'hatch', 'water_change', 'water_test'].sort())
  expect(factKinds.filter((kind) => !subjectKinds.some((subject) => writtenOf(subject).includes(kind)))).toEqual([])
})

test('the books of animals are written by what brings, takes or counts them', () => {
  expect([...bookKinds].sort()).toEqual(['count', 'hatch', 'loss', 'outcome', 'spawning', 'transfer'])
  // Who hatched or moved is in the book of where they came to.
  expect(new Map(arrivals.map(({ kind, field }) => [kind, field]))).toEqual(
    new Map<FactKind, string>([
      ['hatch', 'batchId'],
      ['transfer', 'toSubjectId'],
    ]),
  )
  const departs = (kind: FactKind) => isDeparture({ kind, subjectId: 'x', data: {} } as unknown as FactDraft)
  expect(factKinds.filter(departs).sort()).toEqual(['loss', 'outcome', 'transfer'])
})
