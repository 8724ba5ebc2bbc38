import type { ProblemParts } from '@/base/api/problem.ts'

export type Next =
  | { is: 'booked' }
  /** Said no: it is the person's again. */
  | { is: 'refused' }
  /** Nobody, or somebody else, is signed in. */
  | { is: 'sign_in' }
  | { is: 'again'; why: 'network' | 'server'; afterMs: number }

// from memory: a phone at the edge of a wireless network is back within seconds, or not for minutes
const shortestWaitMs = 1000
const longestWaitMs = 15_000

// from memory: a server that is starting anew says no for some seconds; one that fails at the same thing five times has a fault
const mostFaults = 5

/** The server will take it later, as it is. */
const laterCodes: ReadonlySet<ProblemParts['code']> = new Set(['too_many_requests', 'unavailable', 'busy', 'disk_full'])

const waitMs = (tries: number) => Math.min(shortestWaitMs * 2 ** tries, longestWaitMs)

/**
 * What to do with a command after one try.
 * @param problem what was answered; null for a yes.
 * @param tries how many went wrong before this one.
 */
export function whatNext(problem: ProblemParts | null, tries: number): Next {
  if (problem === null) return { is: 'booked' }
  const { code, status, retryAfterS } = problem
  if (status === 0) return { is: 'again', why: 'network', afterMs: waitMs(tries) }
  if (code === 'not_signed_in') return { is: 'sign_in' }
  const again: Next = { is: 'again', why: 'server', afterMs: (retryAfterS ?? 0) * 1000 || waitMs(tries) }
  if (laterCodes.has(code)) return again
  // What no sentence of ours came with may be a proxy's word while the server is away; or it is ours to mend, and then
  // asking for ever would hold up all that stands behind it.
  if (code === 'internal' || code === 'unreadable') return tries < mostFaults ? again : { is: 'refused' }
  return { is: 'refused' }
}
