import type { CountTarget, SubjectKind } from '@fryward/shared'
import { type FactFilter, factFilters, kindsOfFilter } from './timeline.ts'

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

const filterLabels: Record<FactFilter, string> = {
  everything: 'Everything',
  counts: 'Counts',
  feedings: 'Feedings',
  harvests: 'Harvests',
  losses: 'Losses',
  water: 'Water',
  seen: 'Seen',
  care: 'Care',
}

/** What a thing's history can be narrowed to: what may be recorded of it, and the care it gets by its tasks. */
export function filterChoices(kind: SubjectKind): { value: FactFilter; label: string }[] {
  const own: ReadonlySet<string> = new Set(['care', ...kindsOf[kind]])
  return factFilters
    .filter((filter) => filter === 'everything' || kindsOfFilter[filter].some((one) => own.has(one)))
    .map((value) => ({ value, label: filterLabels[value] }))
}

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
