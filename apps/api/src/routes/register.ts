import type { Context } from '@fryward/room'
import { ProblemSchema, type Route, type RouteId, routes } from '@fryward/shared'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { sendAnswer } from '../answer.ts'
import { type Call, handlers } from './handlers.ts'
import { withRepeatKey } from './repeat-key.ts'

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
  return route.method === 'GET' ? ctx : withRepeatKey(ctx, request)
}
