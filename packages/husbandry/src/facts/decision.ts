import type { FactEffects } from './effects.ts'

/** What is meant with a clutch: the latest that stands is read, nothing else changes. */
export const decision: FactEffects<'decision'> = {}
