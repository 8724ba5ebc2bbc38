import type { Actor, Context } from '@fryward/room'
import { RoomError } from '@fryward/room'
import type { Database } from '@fryward/store'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { type Auth, clientAddressHeader } from '../auth.ts'
import { recentSessions } from '../recent-sessions.ts'

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
    app.decorate('personOf', async (request: FastifyRequest) => {
      const cookie = request.headers.cookie ?? ''
      const known = recent.find(cookie)
      if (known) return known
      const found = await auth.api.getSession({ headers: headersOf(request) })
      if (!found)
        throw new RoomError('not_signed_in', 'Sign in first; what you have typed stays on this phone until then.')
      const person = { kind: 'person' as const, userId: found.user.id, name: found.user.name }
      recent.keep(cookie, person)
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
  reply.code(answer.status)
  answer.headers.forEach((value, name) => {
    if (name !== 'set-cookie') reply.header(name, value)
  })
  for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
  return reply.serializer((text: string) => text).send(await answer.text())
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
