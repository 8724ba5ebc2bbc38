import type { FactEffects } from './effects.ts'
import { removedFrom } from './removed-from.ts'

/** Water taken out and put in: what swims in a culture leaves with what is taken out. */
export const waterChange: FactEffects<'water_change'> = {
  waterFallsL: ({ data }) => data.removedL - data.addedL,
  culture: ({ data }, vessel) => removedFrom(vessel, data.removedL),
}
