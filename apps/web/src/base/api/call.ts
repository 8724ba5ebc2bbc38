import {
  addressIn,
  type BodyInputOf,
  type JsonRouteId,
  type ParamsOf,
  personHeader,
  type QueryOf,
  type ResponseOf,
} from '@fryward/shared'
import { findRoute } from './find-route.ts'
import { newId } from './new-id.ts'
import { noAnswer, readProblem, unreadableAnswer } from './problem.ts'
import { hearServerClock } from './server-clock.ts'

type Input<K extends JsonRouteId> = {
  params?: ParamsOf<K>
  query?: Partial<QueryOf<K>>
  body?: BodyInputOf<K>
  /** The same key for a repeat of the same write; a new one is made when left out. */
  requestKey?: string
  /** Whose it is: refused when somebody else is signed in on the device. */
  personId?: string
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
    throw noAnswer(cause)
  }
}

/** A body that broke off, or a page that some box between here and the server put in its place, is no answer of ours. */
async function readJson(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch (cause) {
    if (!response.ok) return undefined
    throw noAnswer(cause)
  }
}

/**
 * One request of the contract: path, method and shapes come from the table of routes in shared.
 * @throws ApiProblem with the API's own code and sentence.
 */
export async function call<K extends JsonRouteId>(id: K, input: Input<K> = {}): Promise<ResponseOf<K>> {
  const route = await findRoute(id)
  if (!route) throw new Error(`there is no route ${id}`)
  const headers: Record<string, string> = { accept: 'application/json' }
  if (route.method !== 'GET') headers['idempotency-key'] = input.requestKey ?? newId()
  if (input.personId !== undefined) headers[personHeader] = input.personId
  if (input.body !== undefined) headers['content-type'] = 'application/json'
  const response = await send(`${addressIn(route, input.params)}${toQueryString(input.query)}`, {
    method: route.method,
    credentials: 'same-origin',
    headers,
    body: input.body === undefined ? null : JSON.stringify(input.body),
    signal: input.signal ?? null,
  })
  const body = await readJson(response)
  if (!response.ok) throw readProblem(body, response.status, response.headers.get('retry-after'))
  const parsed = route.response.safeParse(body)
  if (parsed.success) return parsed.data as ResponseOf<K>
  throw unreadableAnswer(response.status, parsed.error)
}
