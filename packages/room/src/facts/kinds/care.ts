import type { KindRules } from './kind-rules.ts'

/** Something done, to a thing or in the room as a whole. */
export const care: KindRules<'care'> = {
  about: ['room', 'culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
}
