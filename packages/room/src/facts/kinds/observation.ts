import type { KindRules } from './kind-rules.ts'

/** Something seen, on a thing or in the room as a whole. */
export const observation: KindRules<'observation'> = {
  about: ['room', 'culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
}
