import type { FactEffects } from './effects.ts'
import { removedFrom } from './removed-from.ts'

/** Litres taken from a culture: its water falls, and what swam in them is gone. */
export const harvest: FactEffects<'harvest'> = {
  waterFallsL: ({ data }) => data.volumeL,
  culture: ({ data }, vessel) => removedFrom(vessel, data.volumeL),
}
