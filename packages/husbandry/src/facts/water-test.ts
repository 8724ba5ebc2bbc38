import type { FactEffects } from './effects.ts'

/** What was measured in the water: the latest is read. */
export const waterTest: FactEffects<'water_test'> = {}
