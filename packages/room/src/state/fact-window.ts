import type { Fact } from '@fryward/husbandry'
import type { CareAct, FactKind, Instant } from '@fryward/shared'

// Two months cover every window that a rule looks back over; life events and counts of the whole are few and stay.
const windowDays = 60
const dayMs = 86_400_000

const lastingKinds: readonly FactKind[] = [
  ...(['spawning', 'hatch', 'inoculation', 'transfer', 'loss', 'outcome', 'decision'] as const),
]
const lastingCounts: readonly string[] = ['eggs', 'larvae', 'juveniles']
// Fish that came into quarantine have no page of their own, and a tin is tested four times a year.
const lastingActs: readonly CareAct[] = ['fish_arrived', 'quarantine_empty', 'test_cysts']
export const lasting = { kinds: lastingKinds, counts: lastingCounts, acts: lastingActs }

/** From when on a room's facts are known whole; the same all through a day (UTC), so that what is known of it stays. */
export const windowStart = (now: Instant): Instant =>
  new Date((Math.floor(Date.parse(now) / dayMs) - windowDays) * dayMs).toISOString()

export const isLasting = (fact: Fact): boolean =>
  lastingKinds.includes(fact.kind) ||
  (fact.kind === 'count' && lastingCounts.includes(fact.data.of)) ||
  (fact.kind === 'care' && lastingActs.includes(fact.data.act))
