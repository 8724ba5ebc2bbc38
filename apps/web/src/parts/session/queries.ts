import type { BodyInputOf } from '@fryward/shared'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { leaveBy } from '@/base/api/leaving.ts'
import { isApiProblem } from '@/base/api/problem.ts'
import { meOptions } from './me.ts'

export const serverOptions = () =>
  queryOptions({ queryKey: ['server'], queryFn: ({ signal }) => call('getServer', { signal }) })

/** Where the bare address leads. */
export const wayInOptions = () =>
  queryOptions({
    queryKey: ['way-in'],
    staleTime: 0,
    queryFn: async ({ signal }) => {
      if (await isSignedIn(signal)) return '/rooms'
      const { isClaimed, hasDemoRoom } = await call('getServer', { signal })
      return isClaimed || hasDemoRoom ? '/sign-in' : '/claim'
    },
  })

async function isSignedIn(signal: AbortSignal): Promise<boolean> {
  try {
    await call('getMe', { signal })
    return true
  } catch (problem) {
    if (isApiProblem(problem) && problem.code === 'not_signed_in') return false
    throw problem
  }
}

/** For whoever claimed the server. A disk fills while somebody looks at a page. */
export const serverStateOptions = () =>
  queryOptions({
    queryKey: ['server', 'state'],
    queryFn: ({ signal }) => call('getServerState', { signal }),
    refetchInterval: 60_000,
  })

export const invitationPreviewOptions = (token: string) =>
  queryOptions({
    queryKey: ['invitation', token],
    queryFn: ({ signal }) => call('getInvitationPreview', { params: { token }, signal }),
  })

type Credentials = { email: string; password: string }

export function useSignIn() {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (credentials: Credentials) => call('signIn', { body: credentials }),
    // Another person's pages must never show through.
    onSuccess: () => queryClient.clear(),
  })
}

/** The second step, where the first asked for a code. */
export function useSignInWithCode() {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (code: string) => call('signInWithCode', { body: { code } }),
    onSuccess: () => queryClient.clear(),
  })
}

export const useAskForNewPassword = () =>
  useMutation({ mutationFn: (email: string) => call('askForNewPassword', { body: { email } }) })

export const passwordResetOptions = (token: string) =>
  queryOptions({
    queryKey: ['password-reset', token],
    queryFn: ({ signal }) => call('getPasswordReset', { params: { token }, signal }),
  })

export function useGiveNewPassword(token: string) {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: (password: string) => call('giveNewPassword', { params: { token }, body: { password } }),
    // Whoever was signed in here is not any more.
    onSuccess: () => queryClient.removeQueries({ queryKey: meOptions().queryKey }),
  })
}

export function useSignOut() {
  const queryClient = useQueryClient()
  const signOut = () => leaveBy(() => call('signOut', { body: {} }))
  return useMutation({ mutationFn: signOut, onSuccess: () => queryClient.clear() })
}

/** Claims the server, then signs the new owner in with what was just typed. */
export function useClaim() {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: async (body: BodyInputOf<'claimServer'>) => {
      await call('claimServer', { body })
      await call('signIn', { body: { email: body.email, password: body.password } })
    },
    onSuccess: () => queryClient.clear(),
  })
}

/** Makes an account from an invitation, then signs in with it. */
export function useJoin(token: string) {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: async (body: BodyInputOf<'joinByInvitation'>) => {
      const joined = await call('joinByInvitation', { params: { token }, body })
      await call('signIn', { body: { email: body.email, password: body.password } })
      return joined
    },
    onSuccess: () => queryClient.clear(),
  })
}

export function useAcceptInvitation(token: string) {
  const queryClient = useQueryClient()
  return useMutation({
    mutationFn: () => call('acceptInvitation', { params: { token }, body: {} }),
    onSuccess: () => queryClient.invalidateQueries({ queryKey: meOptions().queryKey }),
  })
}
