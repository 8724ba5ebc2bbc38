import { QueryCache, QueryClient } from '@tanstack/react-query'
import { isBeingLeft } from './leaving.ts'
import { isApiProblem } from './problem.ts'

const openPaths = ['/sign-in', '/claim', '/join', '/new-password']

/** A session that ran out sends the person to sign in and back to where they were. */
function goToSignIn() {
  const here = `${window.location.pathname}${window.location.search}`
  if (isBeingLeft() || openPaths.some((path) => here.startsWith(path))) return
  window.location.assign(`/sign-in?next=${encodeURIComponent(here)}`)
}

const mayHelpToAskAgain = (error: unknown) =>
  !isApiProblem(error) || error.code === 'offline' || error.code === 'unavailable' || error.code === 'busy'

export function makeQueryClient(): QueryClient {
  return new QueryClient({
    queryCache: new QueryCache({
      onError: (error) => {
        if (isApiProblem(error) && error.code === 'not_signed_in') goToSignIn()
      },
    }),
    defaultOptions: {
      queries: {
        // Live events say when something changed; a minute covers the gap when they cannot.
        staleTime: 60_000,
        // The server may be on a LAN without internet, where the browser calls itself offline.
        networkMode: 'always',
        retry: (failures, error) => failures < 2 && mayHelpToAskAgain(error),
      },
      mutations: { networkMode: 'always', retry: false },
    },
  })
}
