import type { Instant } from '@fryward/shared'

// A device that posts each ten minutes is heard; it is marked to the minute.
const heardMs = 15 * 60_000

export const isHeard = (at: Instant, now: Date): boolean => now.getTime() - Date.parse(at) <= heardMs
