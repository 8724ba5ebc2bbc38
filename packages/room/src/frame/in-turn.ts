import type { Id } from '@fryward/shared'
import type { Database } from '@fryward/store'
import { actorUserId, type Context } from '../context.ts'
import { createWaitingLine, type WaitingLine } from './waiting-line.ts'

// Writers of a room follow one another at its row lock in any case. Here they wait without a connection, so that one
// busy room leaves the others theirs. Two at once: while one works, the next is as far as the lock.
const limits = { atOnce: 2, mostWaiting: 400, longestWaitMs: 15_000 }

const lines = new WeakMap<Database, Map<Id, WaitingLine>>()

/** Runs a write in a room when it is its turn in this process; turns go round among the people who wait. */
export async function inTurn<T>({ database, actor }: Context, roomId: Id, work: () => Promise<T>): Promise<T> {
  const rooms = lines.get(database) ?? new Map<Id, WaitingLine>()
  lines.set(database, rooms)
  const line = rooms.get(roomId) ?? createWaitingLine(limits)
  rooms.set(roomId, line)
  await line.enter(actorUserId(actor) ?? '')
  try {
    return await work()
  } finally {
    line.leave()
    if (line.isEmpty()) rooms.delete(roomId)
  }
}
