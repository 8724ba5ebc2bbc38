import type { FactKind, SubjectKind } from '@fryward/shared'
import { recordKindsOf } from '@/parts/facts/record-kinds.ts'

export const factFilters = ['everything', 'counts', 'feedings', 'harvests', 'losses', 'water', 'seen', 'care'] as const
/** What the list can be narrowed to. */
export type FactFilter = (typeof factFilters)[number]

/** The kinds of fact behind each word; none means all of them. */
export const kindsOfFilter: Record<FactFilter, readonly FactKind[]> = {
  everything: [],
  counts: ['count'],
  feedings: ['feeding'],
  harvests: ['harvest'],
  losses: ['loss', 'outcome'],
  water: ['water_change', 'water_test', 'water_reading'],
  seen: ['observation'],
  care: ['care', 'treatment', 'decision', 'cure'],
}

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
  const own: ReadonlySet<string> = new Set(['care', ...recordKindsOf[kind]])
  return factFilters
    .filter((filter) => filter === 'everything' || kindsOfFilter[filter].some((one) => own.has(one)))
    .map((value) => ({ value, label: filterLabels[value] }))
}
