import type { AlarmKind, GaugeQuantity } from '@fryward/shared'
import { quantities } from '../quantities.ts'

/** What a gauge is to keep to. A limit that is null is none. */
export type Band = {
  quantity: GaugeQuantity
  low: number | null
  high: number | null
  forMinutes: number
  silentAfterMinutes: number
  maxPerHour: number | null
}

/** What is known of a gauge's water at a moment; times are milliseconds since 1970. */
export type Watched = {
  /** The newest reading. */
  latest: { at: number; value: number } | null
  /** A reading as old as counts, from which on all lie on the side of the limits where the newest one lies. */
  since: number | null
  /** The extremes of as long as counts, the newest reading among them. */
  lately: { low: number; high: number } | null
  /** The extremes of the hour before the newest reading. */
  hour: { low: number; high: number } | null
  /** Whether it has read one and the same value for as long as makes it stuck. */
  isStuck: boolean
  /** When it last sent a value that was refused because no water has it. */
  implausibleAt: number | null
  /** When the gauge was set up, or this server woke up: one that reads nothing is silent from then on. */
  heardFrom: number
}

type Raised = { kind: AlarmKind; value: number | null }
export type Verdict = Raised | 'keeps' | 'undecided'

/**
 * What is wrong with a gauge or its water, the worst first: it cannot be heard or believed, the water is outside of its band
 * for as long as counts, or changes too fast. `keeps` is inside for as long; between the two nothing is decided, so that an alarm
 * neither comes nor goes with each reading at the limit.
 */
export function judge(band: Band, watched: Watched, now: number): Verdict {
  const { latest, implausibleAt, heardFrom } = watched
  const isHeard = (at: number) => now - at <= band.silentAfterMinutes * 60_000
  if (!isHeard(Math.max(latest?.at ?? heardFrom, heardFrom))) {
    const isNonsense = implausibleAt !== null && isHeard(implausibleAt)
    return isNonsense ? { kind: 'implausible', value: null } : { kind: 'silent', value: null }
  }
  if (latest === null) return 'undecided'
  if (isImplausible(band, watched)) return { kind: 'implausible', value: latest.value }
  const ofBand = judgeBand(band, watched, now)
  if (typeof ofBand === 'object') return ofBand
  if (watched.isStuck) return { kind: 'stuck', value: latest.value }
  return tooFast(band, watched) ?? ofBand
}

function isImplausible({ quantity }: Band, { lately }: Watched): boolean {
  const { low, high } = quantities[quantity].plausible
  return lately !== null && (lately.high < low || lately.low > high)
}

function judgeBand({ low, high, forMinutes }: Band, { latest, since }: Watched, now: number): Verdict {
  if (latest === null || since === null || now - since < forMinutes * 60_000) return 'undecided'
  if (high !== null && latest.value > high) return { kind: 'too_high', value: latest.value }
  if (low !== null && latest.value < low) return { kind: 'too_low', value: latest.value }
  return 'keeps'
}

/** By how much the water rose (over nothing) or fell within an hour, where that is more than it may. */
function tooFast({ maxPerHour }: Band, { latest, hour }: Watched): Raised | null {
  if (maxPerHour === null || latest === null || hour === null) return null
  const [rose, fell] = [latest.value - hour.low, hour.high - latest.value]
  if (Math.max(rose, fell) <= maxPerHour) return null
  return { kind: 'too_fast', value: rose >= fell ? rose : -fell }
}
