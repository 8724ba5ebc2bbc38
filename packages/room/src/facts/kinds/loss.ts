import type { KindRules } from './kind-rules.ts'

/** Animals that died: they leave the book of their clutch, batch or group. */
export const loss: KindRules<'loss'> = {
  about: ['culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
  book: { departs: true },
}
