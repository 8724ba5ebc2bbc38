import type { KindRules } from './kind-rules.ts'

/** Measured water of a vessel. */
export const waterTest: KindRules<'water_test'> = { about: ['culture', 'tank', 'larval_batch'] }
