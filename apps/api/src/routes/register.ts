import { createHash } from 'node:crypto'
import { type Context, RoomError } from '@fryward/room'
import { ProblemSchema, type Route, type RouteId, routes } from '@fryward/shared'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { sendAnswer } from '../answer.ts'
import { type Call, handlers } from './handlers.ts'

export type RegisterOptions = { publicUrl: string; version: string }

// Guessing codes, tokens and passwords is slowed down more than the rest.
const guessable = new Set<RouteId>(['claimServer', 'joinByInvitation', 'getInvitationPreview'])

/** Registers every route of the contract: its schemas, who asks, the repeat key, one call into the house. */
export async function registerRoutes(app: FastifyInstance, options: RegisterOptions): Promise<void> {
  for (const [id, route] of Object.entries(routes) as [RouteId, Route][]) {
    app.route({
      method: route.method,
      url: `/api/v1${route.path}`,
      helmet: false,
      config: guessable.has(id) ? { rateLimit: { max: 20, timeWindow: '1 minute' } } : {},
      schema: schemaOf(id, route),
      handler: async (request, reply) => {
        const ctx = await contextOf(app, request, route)
        const call = { ctx, params: request.params, query: request.query, body: request.body, ...options }
        const handler = handlers[id] as (call: unknown) => Promise<unknown>
        const answer = await handler(call satisfies Record<keyof Call<RouteId>, unknown>)
        return sendAnswer(request, reply.code(route.status), answer)
      },
    })
  }
}

const problem = { content: { 'application/problem+json': { schema: ProblemSchema } } }

function schemaOf(id: RouteId, route: Route) {
  const hasBody = route.method !== 'GET' && route.method !== 'DELETE'
  return {
    operationId: id,
    summary: route.summary,
    description: `For ${route.permission.replace('_', ' ')}.`,
    tags: [route.tag],
    ...(route.permission === 'anyone' ? {} : { security: [{ session: [] }] }),
    params: route.params,
    querystring: route.query,
    ...(hasBody ? { body: route.body } : {}),
    response: { [route.status]: route.response, '4xx': problem, '5xx': problem },
  }
}

async function contextOf(app: FastifyInstance, request: FastifyRequest, route: Route): Promise<Context> {
  if (route.permission === 'anyone') return app.contextFor({ kind: 'system', job: 'door' })
  const ctx = app.contextFor(await app.personOf(request))
  if (route.method === 'GET') return ctx
  const key = repeatKeyOf(request)
  return key === undefined ? ctx : { ...ctx, idempotency: { key, requestHash: hashOf(request) } }
}

function repeatKeyOf(request: FastifyRequest): string | undefined {
  const key = request.headers['idempotency-key']
  if (key === undefined) return undefined
  if (typeof key !== 'string' || !/^[\x21-\x7e]{8,128}$/.test(key))
    throw new RoomError('invalid_input', 'An Idempotency-Key has 8 to 128 characters without spaces; a UUID does.')
  return key
}

function hashOf(request: FastifyRequest): string {
  return createHash('sha256')
    .update(JSON.stringify([request.method, request.url, request.body ?? null]))
    .digest('hex')
}
