import type { BodyInputOf, Id, Role } from '@fryward/shared'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { sureItIsMe } from '@/parts/again/sign-in-again.ts'
import { roomKey, useRefreshRoom } from '@/parts/rooms/queries.ts'

export const peopleOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'people'],
    queryFn: ({ signal }) => call('listPeople', { params: { roomId }, signal }),
  })

export const invitationsOptions = (roomId: Id) =>
  queryOptions({
    queryKey: [...roomKey(roomId), 'invitations'],
    queryFn: ({ signal }) => call('listInvitations', { params: { roomId }, signal }),
  })

export function useChangeRole(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: ({ userId, role }: { userId: string; role: Role }) =>
      sureItIsMe(() => call('changeRole', { params: { roomId, userId }, body: { role } })),
    onSettled: () => void refresh(),
  })
}

export function useRemovePerson(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (userId: string) => sureItIsMe(() => call('removePerson', { params: { roomId, userId } })),
    onSettled: () => void refresh(),
  })
}

/** For whoever owns the server: a link for somebody who forgot their password. */
export const useCreateResetLink = () =>
  useMutation({
    mutationFn: (userId: string) => sureItIsMe(() => call('createResetLink', { body: { userId } })),
  })

const useRefreshInvitations = (roomId: Id) => {
  const queryClient = useQueryClient()
  return () => void queryClient.invalidateQueries({ queryKey: invitationsOptions(roomId).queryKey })
}

export function useCreateInvitation(roomId: Id) {
  const refresh = useRefreshInvitations(roomId)
  return useMutation({
    mutationFn: (body: BodyInputOf<'createInvitation'>) =>
      sureItIsMe(() => call('createInvitation', { params: { roomId }, body })),
    onSettled: refresh,
  })
}

export function useRevokeInvitation(roomId: Id) {
  const refresh = useRefreshInvitations(roomId)
  return useMutation({
    mutationFn: (invitationId: Id) => call('revokeInvitation', { params: { roomId, invitationId } }),
    onSettled: refresh,
  })
}
