import type { RoomRecord } from '@fryward/husbandry'
import type { Instant } from '@fryward/shared'

const dayMs = 86_400_000

/** A rotifer culture that a room keeps or kept; `endedAt` null while it stands. */
export type KeptCulture = { startedAt: Instant; endedAt: Instant | null; endCause: string | null }

/** Cultures that were lost, over the whole days on which any were kept: how often they crash here. */
export function crashesOf(cultures: readonly KeptCulture[], now: Instant): Omit<RoomRecord, 'lived'> {
  const days = cultures.map(({ startedAt, endedAt }) =>
    Math.max(0, Math.floor((Date.parse(endedAt ?? now) - Date.parse(startedAt)) / dayMs)),
  )
  const lost = cultures.filter(({ endCause }) => endCause === 'crashed' || endCause === 'contaminated')
  // One that was lost on its first day stood for a day.
  const cultureDays = days.reduce((sum, each) => sum + each, 0)
  return { crashes: lost.length, cultureDays: Math.max(lost.length, cultureDays) }
}
