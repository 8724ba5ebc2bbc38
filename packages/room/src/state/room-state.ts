import {
  careOf,
  type Fact,
  nextSnapshot,
  openSnapshot,
  type RoomSnapshot,
  type RuleSetting,
  type SnapshotClutch,
} from '@fryward/husbandry'
import { type Id, type Instant, RoundsSchema } from '@fryward/shared'
import type { SnapshotRows } from '@fryward/store'
import { closedOff } from './close-off.ts'
import { toStandingFact } from './standing-fact.ts'

/**
 * All that is known of a room as of one revision; every list, page and rule reads this. It never changes: a write makes
 * the next one, from what was written since, or from everything.
 */
export type RoomState = {
  roomId: Id
  revision: number
  /** From when on its facts are known whole. */
  since: Instant
  snapshot: RoomSnapshot
}

export function openState(rows: SnapshotRows, since: Instant): RoomState {
  const facts = rows.facts.map((row) => toStandingFact(row, rows.people))
  const snapshot = openSnapshot(closedOff(snapshotOf(rows, facts), since))
  return { roomId: rows.room.id, revision: rows.revision, since, snapshot }
}

/** The state after everything that was written since; the same as opening it anew. */
export function advanceState(state: RoomState, rows: SnapshotRows, since: Instant): RoomState {
  const kept = without(state.snapshot.facts, rows.struck)
  const added = rows.facts.map((row) => toStandingFact(row, rows.people))
  const next = closedOff(snapshotOf(rows, merged(kept, added)), since)
  return { roomId: state.roomId, revision: rows.revision, since, snapshot: nextSnapshot(state.snapshot, next) }
}

function without(facts: readonly Fact[], struck: readonly Id[]): readonly Fact[] {
  if (struck.length === 0) return facts
  const ids = new Set(struck)
  return facts.filter(({ id }) => !ids.has(id))
}

/** The state on a later day, when nothing was written since: facts have left the window. */
export function slideState(state: RoomState, since: Instant): RoomState {
  if (state.since === since) return state
  return { ...state, since, snapshot: nextSnapshot(state.snapshot, closedOff({ ...state.snapshot }, since)) }
}

/** Two lists in order of `at`, then id, as one; what is new is mostly the newest. */
function merged(kept: readonly Fact[], added: readonly Fact[]): Fact[] {
  const facts = [...kept]
  for (const fact of added) {
    const before = facts.findLastIndex((each) => each.at < fact.at || (each.at === fact.at && each.id < fact.id))
    facts.splice(before + 1, 0, fact)
  }
  return facts
}

function snapshotOf(rows: SnapshotRows, facts: Fact[]): RoomSnapshot {
  const { tanks, cultures, concentrates, pairs, clutches, batches, groups, feedLinks } = rows
  return {
    room: { ...rows.room, rounds: RoundsSchema.parse(rows.room.rounds) },
    tanks,
    cultures,
    concentrates,
    pairs,
    clutches: clutches.map(toClutch),
    batches,
    groups,
    feedLinks,
    foodPlan: rows.foodPlans[0] ?? null,
    facts,
    ruleSettings: settingsOf(rows.ruleChanges),
  }
}

export const toClutch = (row: SnapshotRows['clutches'][number]): SnapshotClutch => ({
  ...row,
  care: careOf(row),
})

function settingsOf(changes: SnapshotRows['ruleChanges']): Record<Id, RuleSetting> {
  return Object.fromEntries(
    changes.map(({ ruleId, isOn, parameters }) => [
      ruleId,
      { isOn, parameters: parameters as RuleSetting['parameters'] },
    ]),
  )
}
