import type { Id } from '@fryward/shared'
import type { Database } from '@fryward/store'
import { LRUCache } from 'lru-cache'
import type { RoomState } from './room-state.ts'

// A large room of a year is some twenty megabytes; the rooms last worked in are known, any other is read anew.
const mostRooms = 40

const known = new WeakMap<Database, LRUCache<Id, RoomState>>()

const statesOf = (database: Database): LRUCache<Id, RoomState> => {
  const states = known.get(database) ?? new LRUCache({ max: mostRooms })
  known.set(database, states)
  return states
}

/** What this process knows of a room: committed, but perhaps no longer the newest. */
export const knownState = (database: Database, roomId: Id): RoomState | undefined => statesOf(database).get(roomId)

/** Of committed states alone: what a write that was rolled back would have made is never known. */
export function keepState(database: Database, state: RoomState): void {
  const before = knownState(database, state.roomId)
  if (!before || before.revision <= state.revision) statesOf(database).set(state.roomId, state)
}
