import * as z from 'zod/mini'
import type { Permission } from '../permission.ts'
import { IdSchema } from '../primitives.ts'

export type Method = 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE'

/** `json` both ways, `bytes` at least one way, or a `stream` of events that stays open. */
export type RouteKind = 'json' | 'bytes' | 'stream'

export type Route<
  P extends z.ZodMiniType = z.ZodMiniType,
  Q extends z.ZodMiniType = z.ZodMiniType,
  B extends z.ZodMiniType = z.ZodMiniType,
  R extends z.ZodMiniType = z.ZodMiniType,
> = {
  kind: RouteKind
  method: Method
  /** What every address of the route begins with. */
  base: string
  path: string
  tag: string
  summary: string
  permission: Permission
  /** Requests a minute from one address, where they are not the server's own limit. */
  perMinute: number | null
  params: P
  query: Q
  body: B
  /** Media types of a body. */
  takes: readonly string[]
  mostBytes: number
  /** The answer is about somebody's own way in: it stays on no disk and in no browser's cache. */
  isSecret: boolean
  /** Only for whoever has typed their password a moment ago, in this browser. */
  asksAgain: boolean
  /** Its body holds a password: no hash of it is kept. */
  carriesPassword: boolean
  /** JSON of the answer, or of each event of a stream. */
  response: R
  /** Media type of the answer. */
  gives: string
  status: number
}

export const json = 'application/json'

/** No body. */
export const none = z.undefined()
export const EmptySchema = z.strictObject({})
export const OkSchema = z.object({ ok: z.literal(true) })
/** Parameters of every path that starts with a room. */
export const inRoom = { roomId: IdSchema }

// The longest honest body is a room set up with a hundred vessels; of somebody who is not signed in, a name with an
// email, a password and a code, each letter of them written as an escape.
const mostBytesOfPeople = 256 * 1024
const mostBytesOfStrangers = 8 * 1024

/**
 * Where addresses begin that are about the browser's session or about passwords. Their writes take no repeat key: with it
 * a hash of the password would be kept, and the answer would be given to whoever is signed in by then.
 */
export const withoutRepeatKey = '/api/auth'

/** Whether a write may be sent again under its key for its first answer. A device's reading is kept once without one. */
export const takesRepeatKey = ({
  method,
  permission,
  carriesPassword,
}: Pick<Route, 'method' | 'permission' | 'carriesPassword'>): boolean =>
  method !== 'GET' && permission !== 'anyone' && permission !== 'device' && !carriesPassword

/** Guessing codes and tokens is slowed down more than the rest. */
export const guessesAMinute = 20

type Common<P extends z.core.$ZodShape> = {
  summary: string
  permission: Permission
  perMinute?: number
  params?: P
  isSecret?: boolean
  asksAgain?: boolean
  carriesPassword?: boolean
}

/** Makes the routes of one resource; the description of the API lists them under its tag. */
export function routesTagged(tag: string, base = '/api/v1') {
  const common = <P extends z.core.$ZodShape>({ summary, permission, perMinute, params, ...marks }: Common<P>) => ({
    base,
    tag,
    summary,
    permission,
    perMinute: perMinute ?? null,
    isSecret: marks.isSecret ?? base === withoutRepeatKey,
    asksAgain: marks.asksAgain ?? false,
    carriesPassword: marks.carriesPassword ?? base === withoutRepeatKey,
    params: z.strictObject((params ?? {}) as P),
  })
  const withoutBody = { body: none, takes: [] as readonly string[], mostBytes: 0 }
  const fetched = <P extends z.core.$ZodShape>(path: string, route: Common<P>) => ({
    ...common(route),
    ...withoutBody,
    method: 'GET' as const,
    path,
    status: 200,
  })
  const noQuery = z.strictObject({})
  return {
    get: <P extends z.core.$ZodShape, Q extends z.ZodMiniType, R extends z.ZodMiniType>(
      path: string,
      route: Common<P> & { query?: Q; response: R },
    ) => ({
      ...fetched(path, route),
      kind: 'json' as const,
      query: (route.query ?? noQuery) as Q,
      response: route.response,
      gives: json,
    }),

    write: <P extends z.core.$ZodShape, B extends z.ZodMiniType, R extends z.ZodMiniType>(
      method: Exclude<Method, 'GET'>,
      path: string,
      route: Common<P> & { body: B; response: R; status?: number },
    ) => ({
      ...common(route),
      kind: 'json' as const,
      method,
      path,
      query: noQuery,
      body: route.body,
      takes: method === 'DELETE' ? [] : [json],
      mostBytes: route.permission === 'anyone' ? mostBytesOfStrangers : mostBytesOfPeople,
      response: route.response,
      gives: json,
      status: route.status ?? (method === 'POST' ? 201 : 200),
    }),

    /** Takes a file as its raw bytes and answers with JSON; what goes with the file stands in the query. */
    upload: <P extends z.core.$ZodShape, Q extends z.ZodMiniType, R extends z.ZodMiniType>(
      path: string,
      route: Common<P> & { query: Q; takes: readonly string[]; mostBytes: number; response: R },
    ) => ({
      ...common(route),
      kind: 'bytes' as const,
      method: 'POST' as const,
      path,
      query: route.query,
      body: none,
      takes: route.takes,
      mostBytes: route.mostBytes,
      response: route.response,
      gives: json,
      status: 201,
    }),

    download: <P extends z.core.$ZodShape, Q extends z.ZodMiniType = typeof noQuery>(
      path: string,
      route: Common<P> & { query?: Q; gives: string },
    ) => ({
      ...fetched(path, route),
      kind: 'bytes' as const,
      query: (route.query ?? noQuery) as Q,
      response: none,
      gives: route.gives,
    }),

    /** Server-sent events; `response` is the data of each. */
    stream: <P extends z.core.$ZodShape, R extends z.ZodMiniType>(
      path: string,
      route: Common<P> & { response: R },
    ) => ({
      ...fetched(path, route),
      kind: 'stream' as const,
      query: noQuery,
      response: route.response,
      gives: 'text/event-stream',
    }),
  }
}
