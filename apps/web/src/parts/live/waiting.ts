'use client'

import type { Id } from '@fryward/shared'
import { useMutationState } from '@tanstack/react-query'
import { isApiProblem } from '@/base/api/problem.ts'

const waitingKey = (roomId: Id) => ['waiting', roomId] as const

// from memory: a phone at the edge of a wireless network is back within seconds, or not for minutes
const shortestWaitMs = 1000
const longestWaitMs = 15_000

/**
 * A sign-off that no answer came to is sent again until one comes, oldest first. Its request key is the same each time,
 * so it is booked once.
 */
export const untilAnswered = (roomId: Id) => ({
  mutationKey: waitingKey(roomId),
  scope: { id: `waiting/${roomId}` },
  retry: (_failures: number, error: unknown) => isApiProblem(error) && error.code === 'offline',
  retryDelay: (failures: number) => Math.min(shortestWaitMs * 2 ** failures, longestWaitMs),
})

/** Tasks whose sign-off waits for the network: sent without an answer, or standing behind one that was. */
export function useWaiting(roomId: Id): Id[] {
  const pending = useMutationState({
    filters: { mutationKey: waitingKey(roomId), status: 'pending' },
    select: ({ state }) => ({
      taskId: (state.variables as { taskId: Id }).taskId,
      isWaiting: state.failureCount > 0 || state.isPaused,
      hasFailed: state.failureCount > 0,
    }),
  })
  // Behind one that is only on its way nobody waits for the network.
  if (!pending.some(({ hasFailed }) => hasFailed)) return []
  return pending.filter(({ isWaiting }) => isWaiting).map(({ taskId }) => taskId)
}
