import type { BodyInputOf, Id } from '@fryward/shared'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { meOptions } from '@/parts/session/me.ts'

export const sessionsOptions = () =>
  queryOptions({
    queryKey: ['account', 'sessions'],
    queryFn: ({ signal }) => call('listSessions', { signal }),
    // What is shown here is asked for to see whether somebody else is in.
    staleTime: 0,
  })

export const mySignInsOptions = () =>
  queryOptions({
    queryKey: ['account', 'sign-ins'],
    queryFn: ({ signal }) => call('listMySignIns', { signal }),
    staleTime: 0,
  })

export const allSignInsOptions = () =>
  queryOptions({
    queryKey: ['account', 'all-sign-ins'],
    queryFn: ({ signal }) => call('listSignIns', { signal }),
    staleTime: 0,
  })

const useRefreshAccount = () => {
  const queryClient = useQueryClient()
  return () => {
    void queryClient.invalidateQueries({ queryKey: ['account'] })
    void queryClient.invalidateQueries({ queryKey: meOptions().queryKey })
  }
}

export function useChangePassword() {
  const refresh = useRefreshAccount()
  return useMutation({
    mutationFn: (body: BodyInputOf<'changePassword'>) => call('changePassword', { body }),
    onSettled: refresh,
  })
}

export function useEndSession() {
  const refresh = useRefreshAccount()
  return useMutation({
    mutationFn: (sessionId: string) => call('endSession', { params: { sessionId } }),
    onSettled: refresh,
  })
}

export function useEndOtherSessions() {
  const refresh = useRefreshAccount()
  return useMutation({ mutationFn: () => call('endOtherSessions'), onSettled: refresh })
}

export function useLeaveRoom() {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (roomId: Id) => call('leaveRoom', { params: { roomId } }),
    // Nothing of the room may show through afterwards.
    onSuccess: () => queryClient.clear(),
  })
}

export const useBeginSecondFactor = () =>
  useMutation({ mutationFn: (password: string) => call('beginSecondFactor', { body: { password } }) })

export function useConfirmSecondFactor() {
  const refresh = useRefreshAccount()
  return useMutation({
    mutationFn: (code: string) => call('confirmSecondFactor', { body: { code } }),
    onSuccess: refresh,
  })
}

export function useEndSecondFactor() {
  const refresh = useRefreshAccount()
  return useMutation({
    mutationFn: (password: string) => call('endSecondFactor', { body: { password } }),
    onSuccess: refresh,
  })
}
