import type { Id } from '@fryward/shared'
import { useQueryClient } from '@tanstack/react-query'
import { useCommand } from '@/base/outbox/use-command.ts'
import { type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'
import { handOverOptions } from './hand-over-options.ts'

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
