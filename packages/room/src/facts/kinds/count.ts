import { invalid } from '../../errors.ts'
import type { KindRules } from './kind-rules.ts'

// Counted one by one, so a volume is not needed to say how many there are.
const heads: readonly string[] = ['larvae', 'eggs', 'juveniles']

/** Animals counted: a sample says how many mL it was, heads need not. */
export const count: KindRules<'count'> = {
  about: ['culture', 'clutch', 'larval_batch', 'juvenile_group', 'tank'],
  assertFits: async (_work, { data }) => {
    if (!heads.includes(data.of) && data.volumeMl === undefined)
      throw invalid(
        'data.volumeMl',
        'Say how many mL were looked at in each replicate: a count without its volume is no density.',
      )
  },
  book: {},
}
