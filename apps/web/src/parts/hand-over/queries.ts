import type { Id } from '@fryward/shared'
import { queryOptions, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { useCommand } from '@/base/outbox/use-command.ts'
import { roomKey, type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'

export const handOverOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'hand-over'],
    queryFn: ({ signal }) => call('getHandOver', { params: { roomId }, signal }),
  })

/** "I have read up to here": what is new starts over from this revision. */
export function useMarkLooked(roomId: Id) {
  const queryClient = useQueryClient()
  return useCommand('markLooked', (revision: number) => ({ params: { roomId }, body: { revision } }), {
    onSuccess: () => queryClient.invalidateQueries({ queryKey: handOverOptions(roomId).queryKey }),
  })
}

export const useWriteNote = (roomId: Id, typed?: Typed) =>
  useRoomCommand(roomId, 'writeNote', (body) => ({ params: { roomId }, body, ...typed }))

export const useSettleWorry = (roomId: Id) =>
  useRoomCommand(roomId, 'settleWorry', (noteId: Id) => ({ params: { roomId, noteId }, body: {} }))
