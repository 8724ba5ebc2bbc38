import type { RefusedReading } from '@fryward/shared'
import type { Arrival, Post, PostedReading } from './posted.ts'

// A device without a clock of its own drifts by minutes; what claims to be later than that would hide the present.
const aheadMs = 5 * 60_000
// A device that was cut off catches up within a month; older times are a wrong clock more often than a late reading.
const behindMs = 31 * 86_400_000

/** What may stand in one place of a post, read as far as it goes. */
export type Said = { index: number; gauge: unknown; at: unknown; value: unknown; unit: unknown }

/** Takes readings one by one, and says of each that is none why. */
export function createReader({ nowMs, isLate = false }: Arrival): { take: (said: Said) => void; post: Post } {
  const post: Post = { readings: [], refused: [] }
  const refuse = (index: number, gauge: string | null, reason: RefusedReading['reason'], detail: string) =>
    post.refused.push({ index, gauge, reason, detail })
  return {
    post,
    take: ({ index, gauge, at, value, unit }) => {
      if (typeof gauge !== 'string' || gauge === '' || gauge.length > 80)
        return void refuse(index, null, 'no_gauge', 'Name the gauge as this device calls it.')
      if (typeof value !== 'number' || !Number.isFinite(value))
        return void refuse(index, gauge, 'not_a_number', 'The value is a number, such as 25.4.')
      if (unit !== null && typeof unit !== 'string')
        return void refuse(index, gauge, 'wrong_unit', 'The unit is a word, such as Cel.')
      if (at === null && isLate) return void refuse(index, gauge, 'no_time', sentences.waited)
      const when = at === null ? nowMs : millisecondsOf(at)
      if (when === null)
        return void refuse(index, gauge, 'no_time', 'The time is ISO 8601 with its zone, or seconds since 1970.')
      const fate = timely(when, nowMs)
      if (fate !== null) return void refuse(index, gauge, fate, sentences[fate])
      post.readings.push({ index, gauge, at: when, value, unit } satisfies PostedReading)
    },
  }
}

const sentences = {
  in_the_future: 'This time has not come yet. Set the clock of the device.',
  too_old: 'This is more than 31 days old. Set the clock of the device.',
  waited: 'This waited at the broker and carries no time, so nobody knows when it was read. Send "at" with it.',
} as const

function timely(at: number, nowMs: number): 'in_the_future' | 'too_old' | null {
  if (at > nowMs + aheadMs) return 'in_the_future'
  return at < nowMs - behindMs ? 'too_old' : null
}

// An instant with its zone: without one it would be an hour of somewhere.
const isoInstant = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:?\d\d)$/

/** Milliseconds since 1970 of an ISO 8601 instant or of seconds since 1970; null for anything else. */
export function millisecondsOf(at: unknown): number | null {
  if (typeof at === 'number') return Number.isFinite(at) && at > 0 && at < 1e11 ? Math.round(at * 1000) : null
  if (typeof at !== 'string') return null
  if (!isoInstant.test(at)) return /^\d{1,10}(\.\d+)?$/.test(at) ? millisecondsOf(Number(at)) : null
  const parsed = Date.parse(at)
  return Number.isNaN(parsed) ? null : parsed
}
