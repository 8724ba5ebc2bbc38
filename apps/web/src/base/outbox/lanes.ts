import type { Command } from '@fryward/shared'
import type { QueueState } from './queue-state.ts'
import type { Queued, Stuck } from './queued.ts'

/** What goes out one after the other: the commands of a room. A picture is slow and nothing rests on it: apart. */
export const laneOf = ({ route, params }: Command): string =>
  route === 'addPhoto' ? `${params.roomId}/photos` : params.roomId

const mayGo = (queued: Queued, personId: string) => queued.command.personId === personId && queued.refusal === undefined

/** Lanes in which something of this person waits. */
export const lanesOf = (queue: readonly Queued[], personId: string): string[] => [
  ...new Set(queue.filter((one) => mayGo(one, personId)).map((one) => laneOf(one.command))),
]

/** What goes out next in a lane: the first that was kept and not refused. A refused one holds nobody up. */
export const headOf = (queue: readonly Queued[], lane: string, personId: string): Queued | undefined =>
  queue.find((one) => mayGo(one, personId) && laneOf(one.command) === lane)

/** What a page shows of the queue: one's own, and how much of others waits. @param personId null while nobody is signed in. */
export function seeQueue(
  queue: readonly Queued[],
  { personId, stuck, isLasting }: { personId: string | null; stuck: Stuck | null; isLasting: boolean },
): QueueState {
  const own = queue.filter((one) => one.command.personId === personId)
  const others = new Map<string, { personId: string; name: string; count: number }>()
  for (const { command, personName } of queue) {
    if (command.personId === personId) continue
    const count = (others.get(command.personId)?.count ?? 0) + 1
    others.set(command.personId, { personId: command.personId, name: personName, count })
  }
  const waiting = own.filter((one) => one.refusal === undefined)
  return {
    waiting,
    refused: own.filter((one) => one.refusal !== undefined),
    others: [...others.values()],
    stuck: waiting.length > 0 ? stuck : null,
    isLasting,
  }
}
