import { type Problem, ProblemSchema, type Route, type RouteId, routes } from '@fryward/shared'
import { expect } from 'vitest'
import type { Person, World } from '../support/world.ts'
import { listen } from './event-stream.ts'

/** The parts of a request as they go over the wire, wrong ones included. */
export type RawRequest = {
  params?: Record<string, string>
  query?: Record<string, string>
  body?: unknown
  headers?: Record<string, string>
  /** Sent as it stands instead of `body`. */
  text?: string
  /** A body of bytes and its type. */
  bytes?: { type: string; data: Buffer }
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

/** Unlike the contract's own, this fills in whatever it is given. */
export function urlOf(id: RouteId, params: Record<string, string> = {}): string {
  const { base, path } = routeOf(id)
  return `${base}${path.replace(/:(\w+)/g, (_match, name: string) => encodeURIComponent(params[name] ?? ''))}`
}

/** One request whose types nobody has checked; the answer is held against the contract all the same. */
export async function send(world: World, person: Person | null, id: RouteId, request: RawRequest): Promise<RawAnswer> {
  const answer =
    routeOf(id).kind === 'stream'
      ? await listenTo(world, person, id, request)
      : await inject(world, person, id, request)
  const { status, contentType, text } = answer
  const isJson = /json/.test(contentType)
  if (text !== '') expect(contentType, text).toContain(status >= 400 ? 'application/problem+json' : routeOf(id).gives)
  const json: unknown = isJson ? JSON.parse(text) : undefined
  const problem = status >= 400 ? ProblemSchema.parse(json) : null
  if (problem === null && isJson) routeOf(id).response.parse(json)
  return { status, contentType, text, json, problem }
}

type Raw = Pick<RawAnswer, 'status' | 'contentType' | 'text'>

async function inject(world: World, person: Person | null, id: RouteId, request: RawRequest): Promise<Raw> {
  const { params, query, body, headers, text, bytes, remoteAddress } = request
  const payload = bytes?.data ?? text ?? (body === undefined ? undefined : JSON.stringify(body))
  const response = await world.app.inject({
    method: routeOf(id).method,
    url: urlOf(id, params),
    ...(remoteAddress ? { remoteAddress } : {}),
    ...(query ? { query } : {}),
    headers: {
      host: 'localhost:3000',
      ...(person ? { cookie: person.cookie } : {}),
      ...(payload === undefined ? {} : { 'content-type': bytes?.type ?? 'application/json' }),
      ...headers,
    },
    ...(payload === undefined ? {} : { payload }),
  })
  return {
    status: response.statusCode,
    contentType: String(response.headers['content-type'] ?? ''),
    text: response.body,
  }
}

/** A stream stays open, so it is asked for over a real connection and hung up on once it has begun. */
async function listenTo(world: World, person: Person | null, id: RouteId, request: RawRequest): Promise<Raw> {
  const abort = new AbortController()
  const query = request.query ? `?${new URLSearchParams(request.query)}` : ''
  const answer = await fetch(`${await listen(world)}${urlOf(id, request.params)}${query}`, {
    signal: abort.signal,
    headers: { ...(person ? { cookie: person.cookie } : {}), ...request.headers },
  })
  const text = answer.ok ? '' : await answer.text()
  abort.abort()
  return { status: answer.status, contentType: answer.headers.get('content-type') ?? '', text }
}
