import type { KindRules } from './kind-rules.ts'

/** A treatment, written down as it was prescribed. */
export const treatment: KindRules<'treatment'> = { about: ['tank', 'pair', 'larval_batch', 'juvenile_group'] }
