import type { KindRules } from './kind-rules.ts'

/** Eggs laid: the book of a clutch begins. */
export const spawning: KindRules<'spawning'> = { about: ['clutch'], book: {} }
