import type { Fact, RoomSnapshot } from '@fryward/husbandry'
import type { Instant } from '@fryward/shared'
import { isLasting } from './fact-window.ts'

/**
 * A room without what the living no longer need of what has ended: before the window only lasting facts stand, and of
 * those only the ones about something that lives, or by which animals came to it; a clutch that was laid before it lives
 * on in the history of its pair alone. So a room of five years is as large as a new one with the same things in it.
 */
export function closedOff(snapshot: RoomSnapshot, since: Instant): RoomSnapshot {
  const pairs = new Set(snapshot.pairs.map(({ id }) => id))
  const clutches = snapshot.clutches.filter(({ pairId, spawnedAt }) => spawnedAt >= since || pairs.has(pairId))
  const { room, tanks, cultures, batches, groups } = snapshot
  const living = new Set(
    [room, ...tanks, ...cultures, ...snapshot.pairs, ...clutches, ...batches, ...groups].map(({ id }) => id),
  )
  const stays = (fact: Fact) => isLasting(fact) && concernedBy(fact).some((id) => living.has(id))
  return { ...snapshot, clutches, facts: closedBefore(snapshot.facts, { since, stays }) }
}

/** Facts come in order of `at`: only the few before the window are looked at, at every write. */
function closedBefore(facts: Fact[], { since, stays }: { since: Instant; stays: (fact: Fact) => boolean }): Fact[] {
  const inWindow = facts.findIndex(({ at }) => at >= since)
  const before = inWindow === -1 ? facts : facts.slice(0, inWindow)
  const kept = before.filter(stays)
  return kept.length === before.length ? facts : [...kept, ...facts.slice(before.length)]
}

function concernedBy(fact: Fact): string[] {
  if (fact.kind === 'transfer') return [fact.subjectId, fact.data.toSubjectId]
  if (fact.kind === 'hatch' && fact.data.batchId !== undefined) return [fact.subjectId, fact.data.batchId]
  return [fact.subjectId]
}
