import type { KindRules } from './kind-rules.ts'

/** Larvae: out of the book of a clutch, into that of the batch that it names. */
export const hatch: KindRules<'hatch'> = { about: ['clutch', 'larval_batch'], book: { arrivesAt: 'batchId' } }
