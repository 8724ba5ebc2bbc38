import type { Fact, SnapshotClutch } from '@fryward/husbandry'
import { readClosed } from '@fryward/store'
import { lasting } from './fact-window.ts'
import type { StateAsked } from './read-state.ts'
import { type RoomState, toClutch } from './room-state.ts'
import { toStandingFact } from './standing-fact.ts'

/** What the room's state no longer holds: clutches of the past, and the lasting facts about all that has ended. */
export type ClosedPast = { clutches: SnapshotClutch[]; facts: Fact[] }

// Lists of the past hang on the state: several lists that are asked for after one event read it once.
const read = new WeakMap<RoomState, ClosedPast>()

export async function closedPastOf({ tx, roomId }: StateAsked, state: RoomState): Promise<ClosedPast> {
  const known = read.get(state)
  if (known) return known
  const rows = await readClosed(tx, { roomId, since: state.since, lasting })
  const past = {
    clutches: rows.clutches.map(toClutch),
    facts: rows.facts.map((row) => toStandingFact(row, rows.people)),
  }
  read.set(state, past)
  return past
}
