import type { CommandAnswer, CommandBody, CommandId, Id } from '@fryward/shared'
import { type QueryClient, queryOptions, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import type { Meant } from '@/base/outbox/meant.ts'
import { useCommand } from '@/base/outbox/use-command.ts'

/** Every query of one room lies under this key, so that a live event can refresh all of it at once. */
export const roomKey = (roomId: Id) => ['room', roomId] as const

/** The list of one kind of thing of a room. */
export const thingsKey = (roomId: Id, kind: string) => [...roomKey(roomId), 'things', kind] as const

export const roomOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'self'],
    queryFn: ({ signal }) => call('getRoom', { params: { roomId }, signal }),
  })

/**
 * Has everything of a room fetched again but the outlooks of cultures nobody touched: those are costly to work out, and
 * only what happens to a culture itself changes its own.
 */
export function refreshRoom(queryClient: QueryClient, roomId: Id, touchedIds: readonly Id[]) {
  return queryClient.invalidateQueries({
    queryKey: roomKey(roomId),
    predicate: ({ queryKey: [, , part, subjectId] }) =>
      part !== outlookPart || touchedIds.some((touched) => touched === subjectId),
  })
}
export const outlookPart = 'outlook'

/** What a room write refreshes: everything of that room. A list is worked out again by almost any of them. */
export function useRefreshRoom(roomId: Id) {
  const queryClient = useQueryClient()
  return () => queryClient.invalidateQueries({ queryKey: roomKey(roomId) })
}

/** What a form adds to a write of its own: the draft it is made of, and what it is about. */
export type Typed = { draftKey?: string | undefined; about?: string }

/**
 * A write in a room, kept on the device until it is answered. Each refreshes the whole room: a fact or a changed vessel
 * works the day out again.
 */
export function useRoomCommand<K extends CommandId, I = CommandBody<K>>(
  roomId: Id,
  route: K,
  mean: (input: I) => Meant<K> | Promise<Meant<K>>,
  onSuccess?: (answer: CommandAnswer<K>, input: I) => unknown,
) {
  const refresh = useRefreshRoom(roomId)
  return useCommand(route, mean, { onSettled: () => void refresh(), ...(onSuccess && { onSuccess }) })
}

export const useChangeRoom = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'changeRoom', (body) => ({ params: { roomId }, body, ...typed }))
