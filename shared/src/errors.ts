import * as z from 'zod/mini'

/** The closed list of problem codes with their HTTP status. The API maps them with an exhaustive table. */
export const errorCodes = {
  invalid_input: 400,
  needs_confirmation: 422,
  not_signed_in: 401,
  not_allowed: 403,
  sign_in_again: 403,
  not_found: 404,
  stale_version: 409,
  already_done: 409,
  too_early: 409,
  wrong_state: 409,
  conflict: 409,
  idempotency_mismatch: 409,
  too_late_to_undo: 409,
  too_large: 413,
  unsupported_media_type: 415,
  too_many_requests: 429,
  internal: 500,
  unavailable: 503,
  busy: 503,
  disk_full: 507,
} as const
export type ErrorCode = keyof typeof errorCodes

/** One wrong field: where it is, what is allowed, and the value that was sent (shortened). */
export const FieldProblemSchema = z.object({
  path: z.string(),
  message: z.string(),
  received: z.optional(z.unknown()),
})
export type FieldProblem = z.infer<typeof FieldProblemSchema>

/** Problem details (RFC 9457). `detail` is one sentence that says what to do next. */
export const ProblemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string(),
    code: z.enum(Object.keys(errorCodes) as [ErrorCode, ...ErrorCode[]]),
    requestId: z.optional(z.string()),
    fields: z.optional(z.array(FieldProblemSchema)),
    /** What the thing is now, with stale_version, already_done and wrong_state. */
    current: z.optional(z.unknown()),
  })
  .register(z.globalRegistry, { id: 'Problem' })
export type Problem = z.infer<typeof ProblemSchema>
