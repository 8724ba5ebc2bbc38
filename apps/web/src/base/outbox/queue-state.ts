'use client'

import type { Id } from '@fryward/shared'
import { useSyncExternalStore } from 'react'
import type { Queued, Stuck } from './queued.ts'

export type QueueState = {
  /** Of whoever is signed in, in their order. */
  waiting: readonly Queued[]
  refused: readonly Queued[]
  /** Of other people who use this device. */
  others: readonly { personId: string; name: string; count: number }[]
  /** Null while what waits is only on its way. */
  stuck: Stuck | null
  /** False where this browser keeps nothing: what waits then goes with the page. */
  isLasting: boolean
}

export const emptyQueue: QueueState = { waiting: [], refused: [], others: [], stuck: null, isLasting: true }

let state = emptyQueue
const listeners = new Set<() => void>()

/** What the page knows of the queue without asking the device. */
export const currentQueue = (): QueueState => state

export function publishQueue(next: QueueState): void {
  state = next
  for (const tell of listeners) tell()
}

function listen(tell: () => void): () => void {
  listeners.add(tell)
  return () => listeners.delete(tell)
}

/** What waits on this device, what was refused, and why nothing goes out. */
export const useQueue = (): QueueState => useSyncExternalStore(listen, currentQueue, () => emptyQueue)

const taskIdOf = ({ command }: Queued): Id | undefined =>
  'taskId' in command.params ? command.params.taskId : undefined

/** Tasks of which something said is still on this device. */
export const useQueuedTaskIds = (): ReadonlySet<Id> => new Set(useQueue().waiting.flatMap((one) => taskIdOf(one) ?? []))

/** Whether something said of a task is still on this device, and not just on its way. */
export function useQueuedTask(taskId: Id): { isQueued: boolean; isStuck: boolean } {
  const { stuck } = useQueue()
  const isQueued = useQueuedTaskIds().has(taskId)
  return { isQueued, isStuck: isQueued && stuck !== null }
}
