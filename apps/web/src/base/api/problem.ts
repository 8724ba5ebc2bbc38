import { type ErrorCode, type FieldProblem, type Problem, ProblemSchema } from '@fryward/shared'

/** What went wrong, as the API said it; `code` is `offline` when no answer came at all. */
export class ApiProblem extends Error {
  override readonly name = 'ApiProblem'
  readonly code: ErrorCode | 'offline' | 'unreadable'
  readonly detail: string
  readonly fields: readonly FieldProblem[]
  /** What the thing is now, with a stale version, a task already done or a wrong state. */
  readonly current: unknown
  readonly status: number

  constructor(problem: {
    code: ErrorCode | 'offline' | 'unreadable'
    detail: string
    status: number
    fields?: readonly FieldProblem[]
    current?: unknown
    cause?: unknown
  }) {
    super(problem.detail, { cause: problem.cause })
    this.code = problem.code
    this.detail = problem.detail
    this.fields = problem.fields ?? []
    this.current = problem.current
    this.status = problem.status
  }
}

const fromProblem = (problem: Problem) => new ApiProblem(problem)

/** Reads problem details; an answer that is none (a proxy's page, say) becomes one plain sentence. */
export async function toApiProblem(response: Response): Promise<ApiProblem> {
  const body: unknown = await response.json().catch(() => undefined)
  const parsed = ProblemSchema.safeParse(body)
  if (parsed.success) return fromProblem(parsed.data)
  return new ApiProblem({
    code: 'unreadable',
    detail: `The server answered ${response.status} without saying why. Try again in a moment.`,
    status: response.status,
  })
}

export const isApiProblem = (error: unknown): error is ApiProblem => error instanceof ApiProblem

/** One sentence for a person, whatever was thrown. */
export const sentenceOf = (error: unknown): string =>
  isApiProblem(error) ? error.detail : 'Something on this page went wrong. Load it again.'
