import type { FactEffects } from './effects.ts'

/** Something done to a thing; a culture that is restarted in a clean vessel begins anew, all else only has its date. */
export const care: FactEffects<'care'> = {
  culture: ({ data }) => (data.act === 'restart_culture' ? { way: 'restarted' } : null),
}
