import type { FactEffects } from './effects.ts'

/** What was fed to whom: amounts to come are learned from it, nothing else changes. */
export const feeding: FactEffects<'feeding'> = {}
