import type { AlarmKind } from '@fryward/shared'

/** What a gauge is to keep to. A limit that is null is none. */
export type Band = { low: number | null; high: number | null; forMinutes: number; silentAfterMinutes: number }

/** What is known of a gauge's water at a moment; times are milliseconds since 1970. */
export type Watched = {
  /** The newest reading. */
  latest: { at: number; value: number } | null
  /** A reading as old as counts, from which on all lie on the side of the limits where the newest one lies. */
  since: number | null
  /** When the gauge was set up: one that never read anything is silent from then on. */
  setUpAt: number
}

export type Verdict = { kind: AlarmKind; value: number | null } | 'keeps' | 'undecided'

/**
 * Whether a gauge is in trouble: silent for too long, or outside its band for as long as it takes to count. `keeps` is
 * inside for as long; between the two nothing is decided, so that an alarm neither comes nor goes with each reading at
 * the limit.
 */
export function judge({ low, high, forMinutes, silentAfterMinutes }: Band, watched: Watched, now: number): Verdict {
  const { latest, since, setUpAt } = watched
  if (now - (latest?.at ?? setUpAt) > silentAfterMinutes * 60_000) return { kind: 'silent', value: null }
  if (latest === null || since === null) return 'undecided'
  const isLong = now - since >= forMinutes * 60_000
  if (!isLong) return 'undecided'
  if (high !== null && latest.value > high) return { kind: 'too_high', value: latest.value }
  if (low !== null && latest.value < low) return { kind: 'too_low', value: latest.value }
  return 'keeps'
}
