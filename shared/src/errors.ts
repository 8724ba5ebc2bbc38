import * as z from 'zod/mini'
import { type ErrorCode, errorCodes } from './error-codes.ts'

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
