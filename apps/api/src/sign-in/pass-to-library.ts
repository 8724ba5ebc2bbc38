import { RoomError } from '@fryward/room'
import type { ErrorCode } from '@fryward/shared'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import { type Auth, clientAddressHeader } from './auth.ts'

export type Passing = {
  auth: Auth
  request: FastifyRequest
  reply: FastifyReply
  publicUrl: string
  /** As if nobody were signed in here. */
  withoutSession?: boolean | undefined
}

/**
 * Passes a step on to the sign-in library: its whole handler, not its bare function, as its limit on tries stands in there.
 * Cookies that it sets go out with the answer.
 * @returns what it answered, as it is.
 */
export async function passToLibrary(passing: Passing, path: string, body: object): Promise<unknown> {
  const { auth, request, reply, publicUrl } = passing
  const headers = headersOf(request)
  if (passing.withoutSession) leaveOutSession(headers)
  headers.set('content-type', 'application/json')
  // Our own check has let the request in; the library's is told so in its own terms.
  headers.set('origin', new URL(publicUrl).origin)
  const url = new URL(`/api/auth${path}`, publicUrl)
  const answer = await auth.handler(new Request(url, { method: 'POST', headers, body: JSON.stringify(body) }))
  for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
  if (answer.status >= 400) throw await refusalOf(answer, request, reply)
  return answer.json()
}

/** Whether this is the password of whoever is signed in; the library answers that to the server alone. */
export async function askLibraryForPassword({ auth, request, reply }: Passing, password: string): Promise<void> {
  const answer = await auth.api.verifyPassword({ body: { password }, headers: headersOf(request), asResponse: true })
  if (answer.status >= 400) throw await refusalOf(answer, request, reply)
}

function leaveOutSession(headers: Headers): void {
  const cookies = (headers.get('cookie') ?? '').split(';').filter((cookie) => !/fryward\.session_/.test(cookie))
  headers.set('cookie', cookies.join(';'))
}

type Refusal = { code: ErrorCode; detail: string }

const beginAgain = 'Sign in again with email and password.'
const refusalsByCode: Record<string, Refusal> = {
  INVALID_PASSWORD: { code: 'invalid_input', detail: 'This is not your password. Check it and try again.' },
  INVALID_CODE: {
    code: 'invalid_input',
    detail: 'This code does not fit. It changes every half minute: type the one that shows now.',
  },
  INVALID_BACKUP_CODE: {
    code: 'invalid_input',
    detail: 'This is no recovery code of yours, or it was used before. Try another.',
  },
  INVALID_TWO_FACTOR_COOKIE: { code: 'not_signed_in', detail: `The first step is too long ago. ${beginAgain}` },
  TOO_MANY_ATTEMPTS_REQUEST_NEW_CODE: { code: 'too_many_requests', detail: `Too many wrong codes. ${beginAgain}` },
  ACCOUNT_TEMPORARILY_LOCKED: {
    code: 'too_many_requests',
    detail: 'Too many wrong codes for this account. Wait a quarter of an hour, then sign in again.',
  },
  TOTP_ALREADY_ENABLED: {
    code: 'wrong_state',
    detail: 'Your account has a second factor already. End that one first to set up another.',
  },
  TOTP_NOT_ENABLED: { code: 'wrong_state', detail: 'There is no authenticator to confirm. Set one up first.' },
  BACKUP_CODES_NOT_ENABLED: {
    code: 'wrong_state',
    detail:
      'This account has no recovery codes yet. Set up a second factor first; then type the six digits that it shows.',
  },
  CREDENTIAL_ACCOUNT_NOT_FOUND: { code: 'wrong_state', detail: 'This account has no password of its own.' },
}
const refusalsByStatus: Record<number, Refusal> = {
  401: {
    code: 'not_signed_in',
    detail: 'This email and password do not go together. Check both and try again.',
  },
  403: { code: 'not_allowed', detail: "This cannot be done from here; sign in on this server's own page." },
  429: { code: 'too_many_requests', detail: 'Too many tries. Wait a minute, then try once more.' },
}

const RefusedSchema = z.object({ code: z.string() })

/** The sign-in library has errors of its own shape and codes; whoever asks gets ours, as from every other route. */
async function refusalOf(answer: Response, request: FastifyRequest, reply: FastifyReply): Promise<RoomError> {
  const wait = answer.headers.get('x-retry-after') ?? answer.headers.get('retry-after')
  if (wait) reply.header('retry-after', wait)
  const text = await answer.text()
  const known = refusalsByCode[codeIn(text)] ?? refusalsByStatus[answer.status]
  if (known) return new RoomError(known.code, known.detail)
  request.log.error({ status: answer.status, answer: text }, 'the sign-in failed')
  return answer.status >= 500
    ? new RoomError('unavailable', 'The server cannot sign anybody in right now. Try again in a moment.')
    : new RoomError('invalid_input', 'The sign-in cannot use this. Check the email and the password.')
}

function codeIn(text: string): string {
  try {
    return RefusedSchema.safeParse(JSON.parse(text)).data?.code ?? ''
  } catch {
    // No JSON: its status is what there is.
    return ''
  }
}

// Kept beside a session, for its owner to tell one browser from another; no browser says more of itself.
const mostLettersOfBrowser = 300

export const browserOf = ({ headers }: FastifyRequest): string =>
  (headers['user-agent'] ?? '').slice(0, mostLettersOfBrowser)

/** What the library needs to know of a request, and nothing else that a stranger may write into one. */
export function headersOf(request: FastifyRequest): Headers {
  const headers = new Headers({ [clientAddressHeader]: request.ip })
  const { cookie } = request.headers
  if (cookie !== undefined) headers.set('cookie', cookie)
  const browser = browserOf(request)
  if (browser !== '') headers.set('user-agent', browser)
  return headers
}
