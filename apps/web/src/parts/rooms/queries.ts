import type { BodyInputOf, Id } from '@fryward/shared'
import { type QueryClient, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { meOptions } from '@/parts/session/queries.ts'

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

/** Each write refreshes the whole room: a fact or a changed vessel works the day out again. */
export function useRoomWrite<I, O>(roomId: Id, mutationFn: (input: I) => Promise<O>) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({ mutationFn, onSettled: () => void refresh() })
}

export function useCreateRoom() {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (body: BodyInputOf<'createRoom'>) => call('createRoom', { body }),
    onSuccess: () => queryClient.invalidateQueries({ queryKey: meOptions().queryKey }),
  })
}

export function useChangeRoom(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'changeRoom'>) => call('changeRoom', { params: { roomId }, body }),
    onSettled: refresh,
  })
}
