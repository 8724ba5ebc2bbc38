import type { SubjectKind } from '@fryward/shared'

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

/** What may be recorded of a thing without a task. */
export const recordKindsOf: Record<SubjectKind, RecordKind[]> = {
  room: [],
  culture: ['count', 'harvest', 'feeding', 'water_change', 'water_test', 'observation', 'loss'],
  tank: ['water_test', 'water_change', 'feeding', 'loss', 'observation', 'treatment'],
  pair: ['feeding', 'spawning', 'observation', 'loss', 'treatment'],
  clutch: ['observation', 'count', 'loss'],
  larval_batch: ['count', 'feeding', 'water_change', 'water_test', 'loss', 'observation'],
  juvenile_group: ['count', 'feeding', 'outcome', 'loss', 'observation', 'treatment'],
}
