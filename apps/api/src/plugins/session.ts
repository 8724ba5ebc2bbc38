import type { Actor, Context } from '@fryward/room'
import { RoomError } from '@fryward/room'
import { type ErrorCode, personHeader } from '@fryward/shared'
import type { Database } from '@fryward/store'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { z } from 'zod'
import { type Auth, clientAddressHeader } from '../auth.ts'
import { recentSessions } from '../recent-sessions.ts'
import { sendProblem } from './problems.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** Who asks, from the session cookie; not_signed_in when nobody does. */
    personOf: (request: FastifyRequest) => Promise<Extract<Actor, { kind: 'person' }>>
    contextFor: (actor: Actor) => Context
  }
}

export type SessionOptions = { auth: Auth; database: Database; now: () => string; publicUrl: string }

/** Sign-in routes under /api/auth, and the person behind a request. */
export const session = fp(
  async (app: FastifyInstance, { auth, database, now, publicUrl }: SessionOptions) => {
    app.decorate('contextFor', (actor: Actor): Context => ({ database, actor, now: now() }))
    const recent = recentSessions()
    const find = async (request: FastifyRequest) => {
      const cookie = request.headers.cookie ?? ''
      const known = recent.find(cookie)
      if (known) return known
      const found = await auth.api.getSession({ headers: headersOf(request) })
      if (!found)
        throw new RoomError('not_signed_in', 'Sign in first; what you have typed stays on this phone until then.')
      const person = { kind: 'person' as const, userId: found.user.id, name: found.user.name }
      recent.keep(cookie, person)
      return person
    }
    app.decorate('personOf', async (request: FastifyRequest) => {
      const person = await find(request)
      const meantFor = request.headers[personHeader]
      // A page left open may still send for whoever was signed in before: nothing is booked in another's name.
      if (meantFor !== undefined && meantFor !== person.userId)
        throw new RoomError('not_signed_in', `${person.name} is signed in here. Sign in as yourself to send this.`)
      return person
    })
    app.route({
      method: ['GET', 'POST'],
      url: '/api/auth/*',
      schema: { hide: true },
      handler: async (request, reply) => {
        const answer = await passToAuth({ auth, request, reply, publicUrl })
        // Signing out, or changing a password, holds at once; afterwards, as another request may have asked meanwhile.
        recent.forget(request.headers.cookie ?? '')
        return answer
      },
    })
  },
  { name: 'session' },
)

async function passToAuth({
  auth,
  request,
  reply,
  publicUrl,
}: {
  auth: Auth
  request: FastifyRequest
  reply: FastifyReply
  publicUrl: string
}): Promise<FastifyReply> {
  const answer = await auth.handler(
    new Request(new URL(request.url, publicUrl), {
      method: request.method,
      headers: headersOf(request),
      body: request.method === 'POST' ? JSON.stringify(request.body ?? {}) : undefined,
    }),
  )
  const text = await answer.text()
  for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
  if (answer.status >= 400) return sendRefusal({ answer, text, request, reply })
  answer.headers.forEach((value, name) => {
    if (name !== 'set-cookie') reply.header(name, value)
  })
  return reply
    .code(answer.status)
    .serializer((body: string) => body)
    .send(text)
}

const refusals: Record<number, { code: ErrorCode; detail: string }> = {
  401: {
    code: 'not_signed_in',
    detail: 'This email and password do not go together. Check both and try again.',
  },
  403: { code: 'not_allowed', detail: "This cannot be done from here; sign in on this server's own page." },
  404: { code: 'not_found', detail: 'The sign-in has nothing at this address.' },
  429: { code: 'too_many_requests', detail: 'Too many tries. Wait a minute, then try once more.' },
}

/** The sign-in library has errors of its own shape and codes; whoever asks gets ours, as from every other route. */
function sendRefusal(refused: { answer: Response; text: string; request: FastifyRequest; reply: FastifyReply }) {
  const { answer, text, request, reply } = refused
  const wait = answer.headers.get('x-retry-after') ?? answer.headers.get('retry-after')
  if (wait) reply.header('retry-after', wait)
  if (answer.status >= 500) {
    request.log.error({ status: answer.status, answer: text }, 'the sign-in failed')
    return sendProblem(reply, request, {
      code: 'unavailable',
      detail: 'The server cannot sign anybody in right now. Try again in a moment.',
    })
  }
  const known = refusals[answer.status]
  return sendProblem(reply, request, known ?? { code: 'invalid_input', detail: sentenceIn(text) })
}

function sentenceIn(text: string): string {
  const said = SaidSchema.safeParse(readJson(text))
  return said.success ? `The sign-in cannot use this: ${said.data.message}.` : 'The sign-in cannot use this.'
}

const SaidSchema = z.object({ message: z.string().min(1) })

function readJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined // an answer without a body, or a page of a proxy: nothing to read out
  }
}

function headersOf(request: FastifyRequest): Headers {
  const headers = new Headers()
  for (const [name, value] of Object.entries(request.headers)) {
    if (value === undefined || name === 'content-length' || name.startsWith('x-forwarded-')) continue
    headers.set(name, Array.isArray(value) ? value.join(', ') : value)
  }
  headers.set(clientAddressHeader, request.ip)
  return headers
}
