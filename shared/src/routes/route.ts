import * as z from 'zod/mini'
import type { Permission } from '../permission.ts'
import { IdSchema } from '../primitives.ts'

export type Method = 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE'

export type Route<
  P extends z.ZodMiniType = z.ZodMiniType,
  Q extends z.ZodMiniType = z.ZodMiniType,
  B extends z.ZodMiniType = z.ZodMiniType,
  R extends z.ZodMiniType = z.ZodMiniType,
> = {
  method: Method
  path: string
  tag: string
  summary: string
  permission: Permission
  params: P
  query: Q
  body: B
  response: R
  status: number
}

/** No body. */
export const none = z.undefined()
export const EmptySchema = z.strictObject({})
export const OkSchema = z.object({ ok: z.literal(true) })
/** Parameters of every path that starts with a room. */
export const inRoom = { roomId: IdSchema }

/** Makes the routes of one resource; the description of the API lists them under its tag. */
export const routesTagged = (tag: string) => ({
  get: <P extends z.core.$ZodShape, Q extends z.ZodMiniType, R extends z.ZodMiniType>(
    path: string,
    route: { summary: string; permission: Permission; params?: P; query?: Q; response: R },
  ) => ({
    method: 'GET' as const,
    path,
    tag,
    summary: route.summary,
    permission: route.permission,
    params: z.strictObject((route.params ?? {}) as P),
    query: (route.query ?? z.strictObject({})) as Q,
    body: none,
    response: route.response,
    status: 200,
  }),

  write: <P extends z.core.$ZodShape, B extends z.ZodMiniType, R extends z.ZodMiniType>(
    method: Exclude<Method, 'GET'>,
    path: string,
    route: { summary: string; permission: Permission; params?: P; body: B; response: R; status?: number },
  ) => ({
    method,
    path,
    tag,
    summary: route.summary,
    permission: route.permission,
    params: z.strictObject((route.params ?? {}) as P),
    query: z.strictObject({}),
    body: route.body,
    response: route.response,
    status: route.status ?? (method === 'POST' ? 201 : 200),
  }),
})
