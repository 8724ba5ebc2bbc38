import type { CountTarget, SubjectKind } from '@fryward/shared'

export const recordKinds = [
  'count',
  'harvest',
  'feeding',
  'water_change',
  'water_test',
  'loss',
  'observation',
  'spawning',
  'outcome',
  'treatment',
] as const
export type RecordKind = (typeof recordKinds)[number]

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

const kindsOf: Record<SubjectKind, RecordKind[]> = {
  room: [],
  culture: ['count', 'harvest', 'feeding', 'water_change', 'water_test', 'observation', 'loss'],
  tank: ['water_test', 'water_change', 'feeding', 'loss', 'observation', 'treatment'],
  pair: ['feeding', 'spawning', 'observation', 'loss', 'treatment'],
  clutch: ['observation', 'count', 'loss'],
  larval_batch: ['count', 'feeding', 'water_change', 'water_test', 'loss', 'observation'],
  juvenile_group: ['count', 'feeding', 'outcome', 'loss', 'observation', 'treatment'],
}

export const recordChoices = (kind: SubjectKind): { kind: RecordKind; label: string }[] =>
  kindsOf[kind].map((one) => ({ kind: one, label: labels[one] }))

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

/** Counted one by one, without a sampled volume. */
export const isHeadTarget = (target: CountTarget): boolean =>
  target === 'larvae' || target === 'eggs' || target === 'juveniles'
