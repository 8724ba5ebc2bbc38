import type { Id } from '@fryward/shared'
import { queryOptions, useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { roomKey, useRefreshRoom } from '@/parts/rooms/queries.ts'
import { letPush } from './push.ts'

// What becomes of a message is no event of the room.
const everyMs = 15_000

export const messagesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'messages'],
    queryFn: ({ signal }) => call('listMessages', { params: { roomId }, signal }),
    refetchInterval: everyMs,
  })

export const absencesOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'absences'],
    queryFn: ({ signal }) => call('listAbsences', { params: { roomId }, signal }),
  })

export const reachOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'reach'],
    queryFn: ({ signal }) => call('getReach', { params: { roomId }, signal }),
  })

export const webhookOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'webhook'],
    queryFn: ({ signal }) => call('getWebhook', { params: { roomId }, signal }),
  })

// Whoever thinks that they are told must be: none of these waits on the device.
function useSentAtOnce<I, T>(roomId: Id, mutationFn: (input: I) => Promise<T>) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({ mutationFn, onSettled: () => void refresh() })
}

export const useChangeReach = (roomId: Id) =>
  useSentAtOnce(roomId, (alarmsByMail: boolean) => call('changeReach', { params: { roomId }, body: { alarmsByMail } }))

export const useAddPhone = (roomId: Id) =>
  useSentAtOnce(roomId, async (pushKey: string) =>
    call('addPhone', { params: { roomId }, body: await letPush(pushKey) }),
  )

export const useRemovePhone = (roomId: Id) =>
  useSentAtOnce(roomId, (phoneId: Id) => call('removePhone', { params: { roomId, phoneId } }))

export const useSendTrial = (roomId: Id) =>
  useSentAtOnce(roomId, () => call('sendTrial', { params: { roomId }, body: {} }))

export const useChangeWebhook = (roomId: Id) =>
  useSentAtOnce(roomId, (url: string | null) => call('changeWebhook', { params: { roomId }, body: { url } }))
