import type { FactEffects } from './effects.ts'

/** What the room chose so that food lasts: read as it is for as long as it stands, nothing else changes. */
export const cure: FactEffects<'cure'> = {}
