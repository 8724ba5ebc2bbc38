import { RoomError } from '@fryward/room'
import { askFor, type ErrorCode, errorCodes, type FieldProblem, type Problem, wantedInstead } from '@fryward/shared'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod'
import { z } from 'zod'
import { isDatabaseAway, isDiskFull } from '../database-away.ts'
import { diskFull } from './disk-guard.ts'

type Answer = { code: ErrorCode; detail: string; fields?: FieldProblem[]; current?: unknown }

const titles: Record<ErrorCode, string> = {
  invalid_input: 'Something in the request cannot be used',
  needs_confirmation: 'Unusual values need a second look',
  not_signed_in: 'Not signed in',
  not_allowed: 'Not allowed',
  sign_in_again: 'Only after signing in again',
  not_found: 'Not found',
  stale_version: 'Changed meanwhile',
  already_done: 'Done already',
  wrong_state: 'Not possible now',
  conflict: 'In conflict with what is there',
  idempotency_mismatch: 'Key used before',
  too_early: 'Not its day yet',
  too_late_to_undo: 'Too late to take back',
  too_large: 'Too large',
  unsupported_media_type: 'Format not understood',
  too_many_requests: 'Too many requests',
  internal: 'Something went wrong here',
  unavailable: 'Not available right now',
  busy: 'Busy',
  disk_full: 'No room on the disk',
}

// The contract's schemas bring few sentences of their own; whoever sends something wrong reads these.
z.config({ localeError: wantedInstead })

/** Turns every error into problem details (RFC 9457). What is not known stays in the log, under the request's id. */
export const problems = fp(
  async (app: FastifyInstance) => {
    app.setErrorHandler((error: FastifyError, request, reply) => {
      const answer = toAnswer(error, request)
      if (answer.code === 'internal') request.log.error({ err: error }, 'unexpected error')
      return sendProblem(reply, request, answer)
    })
    app.setNotFoundHandler((request) => {
      throw nothingAt(request)
    })
    // Said before the body is read, whatever it holds.
    app.addHook('preParsing', (request, _reply, _payload, done) => {
      done(request.is404 ? nothingAt(request) : null)
    })
  },
  { name: 'problems' },
)

const nothingAt = ({ method, url }: FastifyRequest): RoomError =>
  new RoomError('not_found', `There is nothing at ${method} ${cut(url.split('?')[0] ?? '', 100)}.`)

/** An address that the router itself cannot read (broken percent signs, an id of hundreds of letters). */
export function sendUnreadableAddress(_error: FastifyError, request: FastifyRequest, reply: FastifyReply): void {
  sendProblem(reply, request, {
    code: 'not_found',
    detail: 'There is nothing at this address; check how it is written.',
  })
}

export function sendProblem(reply: FastifyReply, request: FastifyRequest, answer: Answer): FastifyReply {
  const status = errorCodes[answer.code]
  const problem: Problem = {
    type: `urn:fryward:problem:${answer.code}`,
    title: titles[answer.code],
    status,
    requestId: request.id,
    ...answer,
    ...shortened(answer),
  }
  if (answer.code === 'busy') reply.header('retry-after', secondsOfBusy)
  // Not a type that the route's schema describes: serialised here.
  return reply
    .code(status)
    .header('content-type', 'application/problem+json; charset=utf-8')
    .serializer(JSON.stringify)
    .send(problem)
}

// About what it takes to write a few dozen things in one room (measured on the demo room).
const secondsOfBusy = 2

// Sentences quote what was sent; however much that was, an answer stays one that a person can read.
const mostFields = 50
const longestSentence = 600
const cut = (text: string, letters: number): string =>
  text.length <= letters ? text : `${text.slice(0, letters - 3).toWellFormed()}...`

const shortened = ({ detail, fields }: Answer): Pick<Answer, 'detail' | 'fields'> => ({
  detail: cut(detail, longestSentence),
  fields: fields?.slice(0, mostFields).map((field) => ({
    ...field,
    path: cut(field.path, 200),
    message: cut(field.message, longestSentence),
    received: typeof field.received === 'string' ? cut(field.received, 200) : field.received,
  })),
})

function toAnswer(error: FastifyError, request: FastifyRequest): Answer {
  if (error instanceof RoomError)
    return { code: error.code, detail: error.message, fields: error.fields, current: error.current }
  if (hasZodFastifySchemaValidationErrors(error))
    return {
      code: 'invalid_input',
      detail: 'The request cannot be used as it stands; see the fields.',
      fields: error.validation.slice(0, mostFields).map((issue) => toField(issue, error.validationContext)),
    }
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
    return { code: 'too_large', detail: 'The body is larger than this route takes.' }
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
    return { code: 'unsupported_media_type', detail: wantedFormat(request) }
  if (error.statusCode === 429)
    return { code: 'too_many_requests', detail: 'Too many requests in a short time. Wait a minute and try again.' }
  if (error.statusCode === 400 || error instanceof SyntaxError)
    return { code: 'invalid_input', detail: 'The body is not JSON that can be read. Check it and send it again.' }
  if (error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500)
    return { code: 'invalid_input', detail: 'The request cannot be used as it stands.' }
  if (isDiskFull(error)) return { code: 'disk_full', detail: diskFull }
  if (isDatabaseAway(error))
    return { code: 'unavailable', detail: 'The database does not answer. Nothing was saved; try again in a moment.' }
  return {
    code: 'internal',
    detail: `Something went wrong here and nothing was saved. Try again; if it stays, look in the server's log for request ${request.id}.`,
  }
}

function wantedFormat(request: FastifyRequest): string {
  const { takes = [] } = request.routeOptions.config
  return takes.length === 0 ? 'Send this request without a body.' : `Send the body as ${takes.join(' or ')}.`
}

function toField(issue: { instancePath?: string; message?: string }, context: string | undefined): FieldProblem {
  const path = (issue.instancePath ?? '').replace(/^\//, '').replaceAll('/', '.')
  const place = context === undefined || context === 'body' ? path : [context, path].filter(Boolean).join('.')
  return { path: place || (context ?? 'body'), message: askFor(issue.message ?? 'something else here') }
}
