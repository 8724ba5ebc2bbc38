import type { CountTarget, Id, SubjectKind } from '@fryward/shared'
import { type RecordKind, recordKindsOf } from '@/parts/facts/record-kinds.ts'

const labels: Record<RecordKind, string> = {
  count: 'A count',
  harvest: 'A harvest',
  feeding: 'A feeding',
  water_change: 'A water change',
  water_test: 'A water test',
  loss: 'A loss',
  observation: 'Something seen',
  spawning: 'Eggs laid',
  outcome: 'Placed, kept or culled',
  treatment: 'A treatment',
}

export const recordChoices = (kind: SubjectKind): { kind: RecordKind; label: string }[] =>
  recordKindsOf[kind].map((one) => ({ kind: one, label: labels[one] }))

export const labelOfRecord = (kind: RecordKind): string => labels[kind]

/** Where what is typed into the form of a fact is kept, and the start of all such places of one thing. */
export const factPlace = (subjectId: Id, kind: RecordKind | ''): string => `fact/${subjectId}/${kind}`

/** What may be counted in or on a thing, the usual one first. */
export const countTargetsOf: Record<SubjectKind, CountTarget[]> = {
  room: [],
  culture: ['culture'],
  tank: [],
  pair: [],
  clutch: ['eggs'],
  larval_batch: ['prey_rotifers', 'prey_artemia', 'algal_cells', 'larvae'],
  juvenile_group: ['juveniles'],
}

/** The same for a culture of copepods, whose nauplii are counted apart from those the sieve holds. */
export const copepodCountTargets: CountTarget[] = ['culture', 'copepod_nauplii']

/** Counted one by one, without a sampled volume. */
export const isHeadTarget = (target: CountTarget): boolean =>
  target === 'larvae' || target === 'eggs' || target === 'juveniles'
