import type { KindRules } from './kind-rules.ts'

/** Fish that were placed, kept or culled: they leave the book, and none of them died. */
export const outcome: KindRules<'outcome'> = {
  about: ['juvenile_group', 'larval_batch', 'pair'],
  book: { departs: true },
}
