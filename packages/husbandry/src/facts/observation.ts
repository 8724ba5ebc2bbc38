import type { FactEffects } from './effects.ts'

/** What was seen: signs and colours that rules and forecasts read. */
export const observation: FactEffects<'observation'> = {}
