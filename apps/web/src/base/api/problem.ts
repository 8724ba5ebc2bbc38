import { type ErrorCode, errorCodes, type FieldProblem, type Problem } from '@fryward/shared'

/** What an ApiProblem is made of, as plain data. */
export type ProblemParts = {
  code: ErrorCode | 'offline' | 'unreadable' | 'no_room_left'
  detail: string
  /** Of the answer; 0 when none of ours came. */
  status: number
  fields?: readonly FieldProblem[] | undefined
  /** What the thing is now, with a stale version, a task already done or a wrong state. */
  current?: unknown
  /** How long to wait before asking again, where the server says so. */
  retryAfterS?: number | undefined
}

/** What went wrong, as the API said it; `code` is `offline` when no answer came at all. */
export class ApiProblem extends Error {
  override readonly name = 'ApiProblem'
  readonly code: ProblemParts['code']
  readonly detail: string
  readonly fields: readonly FieldProblem[]
  readonly current: unknown
  readonly status: number
  readonly retryAfterS: number | undefined

  constructor(problem: ProblemParts & { cause?: unknown }) {
    super(problem.detail, { cause: problem.cause })
    this.code = problem.code
    this.detail = problem.detail
    this.fields = problem.fields ?? []
    this.current = problem.current
    this.status = problem.status
    this.retryAfterS = problem.retryAfterS
  }
}

export const noAnswer = (cause?: unknown): ApiProblem =>
  new ApiProblem({
    code: 'offline',
    detail: 'No answer from the server. Check that this device is on the same network, then try again.',
    status: 0,
    cause,
  })

/** Reads the body of problem details; one that is none (a proxy's page, say) becomes one plain sentence. */
export function readProblem(body: unknown, status: number, retryAfter: string | null): ApiProblem {
  const retryAfterS = retryAfter === null ? undefined : Number(retryAfter)
  const wait = Number.isFinite(retryAfterS) ? { retryAfterS } : {}
  if (isProblem(body)) return new ApiProblem({ ...body, ...wait })
  return new ApiProblem({
    code: 'unreadable',
    detail: `The server answered ${status} without saying why. Try again in a moment.`,
    status,
    ...wait,
  })
}

function isProblem(body: unknown): body is Problem {
  if (typeof body !== 'object' || body === null) return false
  const { code, detail, fields = [] } = body as Partial<Problem>
  const isOurs = typeof code === 'string' && Object.hasOwn(errorCodes, code) && typeof detail === 'string'
  return isOurs && Array.isArray(fields)
}

export const isApiProblem = (error: unknown): error is ApiProblem => error instanceof ApiProblem

/** One sentence for a person, whatever was thrown. */
export const sentenceOf = (error: unknown): string =>
  isApiProblem(error) ? error.detail : 'Something on this page went wrong. Load it again.'

/** The same as plain data, which can be kept on the device and told to another tab. */
export function toProblemParts(error: unknown): ProblemParts {
  if (!isApiProblem(error)) return { code: 'internal', detail: sentenceOf(error), status: 500 }
  const { code, detail, status, fields, current, retryAfterS } = error
  return { code, detail, status, fields, current, retryAfterS }
}
