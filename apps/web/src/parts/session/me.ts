import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'

/** Whoever is signed in. Apart from signing in and out, which pages of a room do not load. */
export const meOptions = () => queryOptions({ queryKey: ['me'], queryFn: ({ signal }) => call('getMe', { signal }) })
