import {
  addressOf,
  type BodyInputOf,
  type JsonRouteId,
  type ParamsOf,
  type QueryOf,
  type ResponseOf,
  routes,
} from '@fryward/shared'
import { ApiProblem, toApiProblem } from './problem.ts'
import { makeRequestKey } from './request-key.ts'
import { hearServerClock } from './server-clock.ts'

type Input<K extends JsonRouteId> = {
  params?: ParamsOf<K>
  query?: Partial<QueryOf<K>>
  body?: BodyInputOf<K>
  /** The same key for a repeat of the same write; a new one is made when left out. */
  requestKey?: string
  signal?: AbortSignal
}

function toQueryString(query: Record<string, unknown> | undefined): string {
  const pairs = Object.entries(query ?? {}).filter(([, value]) => value !== undefined && value !== null)
  if (pairs.length === 0) return ''
  return `?${new URLSearchParams(pairs.map(([name, value]) => [name, String(value)])).toString()}`
}

async function send(url: string, init: RequestInit): Promise<Response> {
  try {
    const response = await fetch(url, init)
    hearServerClock(response)
    return response
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'AbortError') throw cause
    throw new ApiProblem({
      code: 'offline',
      detail: 'No answer from the server. Check that this device is on the same network, then try again.',
      status: 0,
      cause,
    })
  }
}

/**
 * One request of the contract: path, method and shapes come from the table of routes in shared.
 * @throws ApiProblem with the API's own code and sentence.
 */
export async function call<K extends JsonRouteId>(id: K, input: Input<K> = {}): Promise<ResponseOf<K>> {
  const route = routes[id]
  const isWrite = route.method !== 'GET'
  const headers: Record<string, string> = { accept: 'application/json' }
  if (isWrite) headers['idempotency-key'] = input.requestKey ?? makeRequestKey()
  if (input.body !== undefined) headers['content-type'] = 'application/json'
  const response = await send(`${addressOf(id, input.params)}${toQueryString(input.query)}`, {
    method: route.method,
    credentials: 'same-origin',
    headers,
    body: input.body === undefined ? null : JSON.stringify(input.body),
    signal: input.signal ?? null,
  })
  if (!response.ok) throw await toApiProblem(response)
  const parsed = route.response.safeParse(await response.json())
  if (parsed.success) return parsed.data as ResponseOf<K>
  throw new ApiProblem({
    code: 'unreadable',
    detail: 'The server answered in a way this page does not understand. Load the page again.',
    status: response.status,
    cause: parsed.error,
  })
}
