import { type ErrorCode, errorCodes } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import type { ProblemParts } from '@/base/api/problem.ts'
import { whatNext } from './what-next.ts'

const answered = (code: ProblemParts['code'], status: number, retryAfterS?: number): ProblemParts => ({
  ...{ code, status, detail: 'Said.', retryAfterS },
})
const codes = Object.keys(errorCodes) as ErrorCode[]
/** The codes at which one first try leads there. */
const leadingTo = (is: string) => codes.filter((code) => whatNext(answered(code, errorCodes[code]), 0).is === is)

describe('what follows from an answer', () => {
  it('is one thing for every code of the contract', () => {
    expect(leadingTo('sign_in')).toEqual(['not_signed_in'])
    expect(leadingTo('again')).toEqual(['too_many_requests', 'internal', 'unavailable', 'busy', 'disk_full'])
    expect(leadingTo('refused')).toEqual([
      ...['invalid_input', 'needs_confirmation', 'not_allowed', 'sign_in_again', 'not_found', 'stale_version'],
      ...['already_done', 'too_early', 'wrong_state', 'conflict', 'idempotency_mismatch', 'too_late_to_undo'],
      ...['too_large', 'unsupported_media_type'],
    ])
  })

  it('is booked at a yes', () => {
    expect(whatNext(null, 3)).toEqual({ is: 'booked' })
  })

  it('without any answer is another try, each later than the last, for as long as it takes', () => {
    const waits = [0, 1, 2, 3, 4, 5, 50].map((tries) => whatNext(answered('offline', 0), tries))
    expect(waits.map((next) => next.is === 'again' && [next.why, next.afterMs])).toEqual([
      ...[1, 2, 4, 8, 15, 15, 15].map((seconds) => ['network', seconds * 1000]),
    ])
  })

  it('waits as long as the server asks', () => {
    expect(whatNext(answered('too_many_requests', 429, 40), 0)).toEqual({ is: 'again', why: 'server', afterMs: 40_000 })
    expect(whatNext(answered('too_many_requests', 429), 0)).toEqual({ is: 'again', why: 'server', afterMs: 1000 })
  })

  it('is a refusal where the server fails at the same thing again and again, so that nothing stands behind it for ever', () => {
    for (const problem of [answered('internal', 500), answered('unreadable', 502), answered('unreadable', 413)]) {
      expect(whatNext(problem, 4).is).toBe('again')
      expect(whatNext(problem, 5).is).toBe('refused')
    }
    expect(whatNext(answered('unavailable', 503), 500).is).toBe('again')
  })
})
