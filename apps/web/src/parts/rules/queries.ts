import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, useRefreshRoom } from '@/parts/rooms/queries.ts'

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

export function useChangeRule(roomId: Id, ruleId: string) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'changeRule'>) => call('changeRule', { params: { roomId, ruleId }, body }),
    onSettled: () => void refresh(),
  })
}
