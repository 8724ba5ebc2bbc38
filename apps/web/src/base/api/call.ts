import {
  type BodyInputOf,
  type JsonRouteId,
  type ParamsOf,
  personHeader,
  type QueryOf,
  type ResponseOf,
  requestOf,
} from '@fryward/shared'
import { newId } from './new-id.ts'
import { noAnswer, readProblem } from './problem.ts'
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
 * One request of the contract. An answer has the shape that the API's tests hold each route to: it is not looked at again.
 * @throws ApiProblem with the API's own code and sentence.
 */
export async function call<K extends JsonRouteId>(id: K, input: Input<K> = {}): Promise<ResponseOf<K>> {
  const { method, url } = requestOf(id, input.params)
  const headers: Record<string, string> = { accept: 'application/json' }
  if (method !== 'GET') headers['idempotency-key'] = input.requestKey ?? newId()
  if (input.personId !== undefined) headers[personHeader] = input.personId
  if (input.body !== undefined) headers['content-type'] = 'application/json'
  const response = await send(`${url}${toQueryString(input.query)}`, {
    method,
    credentials: 'same-origin',
    headers,
    body: input.body === undefined ? null : JSON.stringify(input.body),
    signal: input.signal ?? null,
  })
  const body = await readJson(response)
  if (!response.ok) throw readProblem(body, response.status, response.headers.get('retry-after'))
  return body as ResponseOf<K>
}
