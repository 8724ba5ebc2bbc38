import { densityFromCounts } from '@fryward/live-feed'
import { rememberedByContent } from '../memo/remembered.ts'

type Count = Parameters<typeof densityFromCounts>[0]

// The same counts are read by every rule that asks, and an exact interval costs more than the lookup.
const densities = rememberedByContent<ReturnType<typeof densityFromCounts>>(5000)

/** The density that a count says, as live-feed works it out; remembered by the count's own numbers. */
export function countDensity(count: Count): ReturnType<typeof densityFromCounts> {
  return densities(count, () => densityFromCounts(count))
}
