import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, useRefreshRoom } from '@/parts/rooms/queries.ts'

export const handOverOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'hand-over'],
    queryFn: ({ signal }) => call('getHandOver', { params: { roomId }, signal }),
  })

/** "I have read up to here": what is new starts over from this revision. */
export function useMarkLooked(roomId: Id) {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (revision: number) => call('markLooked', { params: { roomId }, body: { revision } }),
    onSuccess: () => queryClient.invalidateQueries({ queryKey: handOverOptions(roomId).queryKey }),
  })
}

export function useWriteNote(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'writeNote'>) => call('writeNote', { params: { roomId }, body }),
    onSettled: () => void refresh(),
  })
}

export function useSettleWorry(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (noteId: Id) => call('settleWorry', { params: { roomId, noteId }, body: {} }),
    onSettled: () => void refresh(),
  })
}
