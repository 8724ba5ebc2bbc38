import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, type Typed, useRoomCommand } from '@/parts/rooms/queries.ts'

export const rulesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'rules'],
    queryFn: ({ signal }) => call('listRules', { params: { roomId }, signal }),
  })

/** What tomorrow would be; a question, so it refreshes nothing. */
export const usePreviewRule = (roomId: Id, ruleId: string) =>
  useMutation({
    mutationFn: (body: BodyInputOf<'previewRule'>) => call('previewRule', { params: { roomId, ruleId }, body }),
  })

export const useChangeRule = (roomId: Id, ruleId: string, typed?: Typed) =>
  useRoomCommand(roomId, 'changeRule', (body) => ({ params: { roomId, ruleId }, body, ...typed }))
