import type { Context } from '@fryward/room'
import { json, ProblemSchema, type Route, type RouteId, routes, takesRepeatKey } from '@fryward/shared'
import type { FastifyInstance, FastifyReply, FastifyRequest, RouteOptions } from 'fastify'
import { z } from 'zod'
import { sendAnswer } from '../answer.ts'
import type { Download } from '../download.ts'
import type { Feed } from '../plugins/event-streams.ts'
import { admissionTo } from './admission.ts'
import { type Call, handlers, type Surroundings } from './handlers.ts'
import { withRepeatKey } from './repeat-key.ts'

/** Registers every route of the contract: who asks, its schemas, the repeat key, one call into the house. */
export async function registerRoutes(app: FastifyInstance, surroundings: Surroundings): Promise<void> {
  app.decorateRequest('person', null)
  app.decorateRequest('device', null)
  // In a scope of its own, so that what one route reads no other does.
  for (const [id, route] of Object.entries(routes) as [RouteId, Route][])
    await app.register(async (scope) => {
      if (route.kind !== 'json') readBytes(scope, route.takes)
      scope.route(optionsOf(scope, { id, route, surroundings }))
    })
}

/** A body of these types comes whole and as it is; any other, and any where none is taken, is refused. */
function readBytes(scope: FastifyInstance, types: readonly string[]): void {
  scope.removeAllContentTypeParsers()
  for (const type of types)
    scope.addContentTypeParser(type, { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
}

type Registered = { id: RouteId; route: Route; surroundings: Surroundings }

function optionsOf(app: FastifyInstance, { id, route, surroundings }: Registered): RouteOptions {
  return {
    method: route.method,
    url: `${route.base}${route.path}`,
    helmet: false,
    // Bytes and streams would be made only to be thrown away.
    exposeHeadRoute: route.method === 'GET' && route.kind === 'json',
    bodyLimit: Math.max(route.mostBytes, 1),
    config: {
      takes: route.takes,
      ...(route.perMinute === null ? {} : { rateLimit: { max: route.perMinute, timeWindow: '1 minute' } }),
    },
    schema: schemaOf(id, route),
    preParsing: admissionTo(app, route),
    handler: async (request, reply) => {
      const ctx = await contextOf(app, request, route)
      const { params, query, body } = request
      const sent = { type: typeOf(request), isGzipped: request.headers['content-encoding'] === 'gzip' }
      const call = { ctx, params, query, body, sent, door: app.doorOf(request, reply), ...surroundings }
      const handler = handlers[id] as (call: unknown) => Promise<unknown>
      const answer = await handler(call satisfies Record<keyof Call<RouteId>, unknown>)
      reply.code(route.status)
      if (route.kind === 'stream') return app.openEventStream(request, reply, answer as Feed)
      if (route.gives !== json) return sendDownload({ request, reply, type: route.gives }, answer as Download)
      return sendAnswer({ request, reply, isSecret: route.isSecret }, answer)
    },
  }
}

/** The media type of a body, without what else the header says of it. */
const typeOf = ({ headers }: FastifyRequest): string => (headers['content-type'] ?? '').split(';')[0]?.trim() ?? ''

type Sending = { request: FastifyRequest; reply: FastifyReply; type: string }

function sendDownload({ request, reply, type }: Sending, { bytes, headers }: Download): FastifyReply {
  const { etag, 'content-length': _length, ...others } = headers
  if (etag === undefined || request.headers['if-none-match'] !== etag)
    return reply.headers(headers).type(type).send(bytes)
  bytes.destroy()
  return reply
    .headers({ etag, ...others })
    .code(304)
    .send()
}

const problem = { content: { 'application/problem+json': { schema: ProblemSchema } } }
const bytes = z.string().meta({ format: 'binary' })

function schemaOf(id: RouteId, route: Route) {
  const answer = route.kind === 'bytes' && route.gives !== json ? bytes : route.response
  return {
    operationId: id,
    summary: route.summary,
    description: `For ${route.permission.replace('_', ' ')}.`,
    tags: [route.tag],
    ...securityOf(route),
    params: route.params,
    querystring: route.query,
    ...(route.kind === 'json' && route.takes.length > 0 ? { body: route.body } : {}),
    response: { [route.status]: { content: { [route.gives]: { schema: answer } } }, '4xx': problem, '5xx': problem },
  }
}

function securityOf({ permission }: Route): { security?: Record<string, string[]>[] } {
  if (permission === 'anyone') return {}
  return { security: [{ [permission === 'device' ? 'device' : 'session']: [] }] }
}

function contextOf(app: FastifyInstance, request: FastifyRequest, route: Route): Context | Promise<Context> {
  if (request.device !== null) return app.contextFor(request.device)
  if (request.person === null) return app.contextFor({ kind: 'system', job: 'door' })
  const ctx = app.contextFor(request.person)
  return takesRepeatKey(route) ? withRepeatKey(ctx, request) : ctx
}
