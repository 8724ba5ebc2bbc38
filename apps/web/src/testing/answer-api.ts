import { type BodyOf, type ParamsOf, type ResponseOf, type RouteId, routes } from '@fryward/shared'
import { expect, vi } from 'vitest'

export type Refusal = { status: number; code: string; detail: string; fields?: { path: string; message: string }[] }
type Answer<K extends RouteId> = (asked: {
  params: ParamsOf<K>
  body: BodyOf<K>
}) => ResponseOf<K> | { refused: Refusal }
type Answers = { [K in RouteId]?: Answer<K> }
type Asked = { route: RouteId; body: unknown }

const unexpected: string[] = []

/** A request that nobody answers reads as "no network" on the page: told after each test, or one would go on without it. */
export const assertAllAnswered = () => expect(unexpected.splice(0)).toEqual([])

function findRoute(method: string, path: string): { route: RouteId; params: Record<string, string> } | undefined {
  for (const [route, known] of Object.entries(routes) as [RouteId, (typeof routes)[RouteId]][]) {
    if (known.method !== method) continue
    const found = new RegExp(`^${known.base}${known.path.replaceAll(/:(\w+)/g, '(?<$1>[^/]+)')}$`).exec(path)
    if (found) return { route, params: found.groups ?? {} }
  }
  return undefined
}

const toProblem = ({ refused }: { refused: Refusal }) =>
  Response.json(
    { type: 'about:blank', title: refused.code, requestId: 'made-up', fields: [], ...refused },
    { status: refused.status },
  )

/**
 * Stands where the network is: requests of the table of routes get these answers, their bodies held against the
 * contract first. What was asked is told in its order.
 */
export function answerApi(answers: Answers): { writes: Asked[] } {
  const writes: Asked[] = []
  vi.stubGlobal('fetch', async (url: string, init: RequestInit = {}) => {
    const method = init.method ?? 'GET'
    const found = findRoute(method, new URL(url, 'http://page.test').pathname)
    const answer = found && (answers[found.route] as Answer<RouteId> | undefined)
    if (!found || !answer) {
      unexpected.push(`${method} ${url}`)
      throw new TypeError('nobody answers')
    }
    const route = routes[found.route]
    const body = typeof init.body === 'string' ? route.body.parse(JSON.parse(init.body)) : undefined
    if (method !== 'GET') writes.push({ route: found.route, body })
    const given = answer({ params: found.params, body } as Parameters<Answer<RouteId>>[0])
    return typeof given === 'object' && given !== null && 'refused' in given ? toProblem(given) : Response.json(given)
  })
  return { writes }
}
