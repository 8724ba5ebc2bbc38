import type { KindRules } from './kind-rules.ts'

/** Water of a vessel that a gauge hangs in. */
export const waterReading: KindRules<'water_reading'> = { about: ['culture', 'tank'] }
