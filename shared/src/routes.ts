import type * as z from 'zod/mini'
import { firstRoutes } from './first-routes.ts'
import { laterRoutes } from './later-routes.ts'
import { addressIn, type Route } from './routes/route.ts'

export { addressIn, json, type Method, type Route, type RouteKind, takesRepeatKey } from './routes/route.ts'
export { firstRoutes, laterRoutes }

/** Every request the API answers. The API registers these; the dashboard and the tests call them. */
export const routes = { ...firstRoutes, ...laterRoutes } as const satisfies Record<string, Route>

export type RouteId = keyof typeof routes
/** Routes whose requests and answers are JSON. */
export type JsonRouteId = { [K in RouteId]: RouteOf<K>['kind'] extends 'json' ? K : never }[RouteId]
export type RouteOf<K extends RouteId> = (typeof routes)[K]
export type ParamsOf<K extends RouteId> = z.infer<RouteOf<K>['params']>
export type QueryOf<K extends RouteId> = z.infer<RouteOf<K>['query']>
export type BodyOf<K extends RouteId> = z.infer<RouteOf<K>['body']>
/** What a caller may send: defaults may be left out. */
export type BodyInputOf<K extends RouteId> = z.input<RouteOf<K>['body']>
export type ResponseOf<K extends RouteId> = z.infer<RouteOf<K>['response']>

/** The same by a route's id. */
export const addressOf = (id: RouteId, params: Record<string, unknown> = {}): string => addressIn(routes[id], params)
