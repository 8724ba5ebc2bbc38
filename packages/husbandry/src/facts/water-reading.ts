import type { FactEffects } from './effects.ts'

/** What a gauge read over some hours: it stands beside the water tests. */
export const waterReading: FactEffects<'water_reading'> = {}
