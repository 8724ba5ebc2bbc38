import { type Problem, ProblemSchema, type Route, type RouteId, routes } from '@fryward/shared'
import type { Person, World } from '../support/world.ts'

/** The parts of a request as they go over the wire, wrong ones included. */
export type RawRequest = {
  params?: Record<string, string>
  query?: Record<string, string>
  body?: unknown
  headers?: Record<string, string>
  /** Sent as it stands instead of `body`. */
  text?: string
  remoteAddress?: string
}
export type RawAnswer = {
  status: number
  contentType: string
  text: string
  /** The parsed body; undefined when there is none. */
  json: unknown
  problem: Problem | null
}

export const routeIds = Object.keys(routes) as RouteId[]
export const routeOf = (id: RouteId): Route => routes[id]

export function urlOf(id: RouteId, params: Record<string, string> = {}): string {
  return `/api/v1${routeOf(id).path.replace(/:(\w+)/g, (_match, name: string) => encodeURIComponent(params[name] ?? ''))}`
}

/** One request whose types nobody has checked; the answer is held against the contract all the same. */
export async function send(
  world: World,
  person: Person | null,
  id: RouteId,
  { params, query, body, headers, text, remoteAddress }: RawRequest,
): Promise<RawAnswer> {
  const hasPayload = text !== undefined || body !== undefined
  const response = await world.app.inject({
    method: routeOf(id).method,
    url: urlOf(id, params),
    ...(remoteAddress ? { remoteAddress } : {}),
    ...(query ? { query } : {}),
    headers: {
      host: 'localhost:3000',
      ...(person ? { cookie: person.cookie } : {}),
      ...(hasPayload ? { 'content-type': 'application/json' } : {}),
      ...headers,
    },
    ...(hasPayload ? { payload: text ?? JSON.stringify(body) } : {}),
  })
  const status = response.statusCode
  const json: unknown = response.body === '' ? undefined : response.json()
  const problem = status >= 400 ? ProblemSchema.parse(json) : null
  if (problem === null) routeOf(id).response.parse(json)
  return { status, contentType: String(response.headers['content-type'] ?? ''), text: response.body, json, problem }
}
