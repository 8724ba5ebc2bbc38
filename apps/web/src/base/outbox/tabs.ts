import type { Id } from '@fryward/shared'
import type { ProblemParts } from '@/base/api/problem.ts'

/** What came back to a command: the API's answer, or what it said against it. */
export type Answered = { id: Id; answer?: unknown; problem?: ProblemParts }
/** What one tab tells the others: the queue has changed, perhaps by an answer. */
export type Told = { answered?: Answered }

const name = 'fryward-outbox'

/** The other tabs of this browser. @returns tells them something. */
export function otherTabs(hear: (told: Told) => void): (told: Told) => void {
  const channel = new BroadcastChannel(name)
  channel.onmessage = (event: MessageEvent<Told>) => hear(event.data)
  return (told) => channel.postMessage(told)
}

/**
 * Does a lane's work while no other tab does. On a plain http address the browser has no locks: then two tabs may send
 * the same command, and its id sees to it that it is booked once.
 */
export async function aloneAmongTabs(lane: string, work: () => Promise<void>): Promise<void> {
  const locks: LockManager | null | undefined = navigator.locks
  if (locks) await locks.request(`${name}/${lane}`, work)
  else await work()
}
