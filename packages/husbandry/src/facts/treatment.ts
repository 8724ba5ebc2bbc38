import type { FactEffects } from './effects.ts'

/** A treatment as it was prescribed: kept, and acted upon by nobody here. */
export const treatment: FactEffects<'treatment'> = {}
