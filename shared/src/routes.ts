import type * as z from 'zod/mini'
import { accountRoutes } from './routes/account.ts'
import { clutchRoutes } from './routes/clutches.ts'
import { concentrateRoutes } from './routes/concentrates.ts'
import { cultureRoutes } from './routes/cultures.ts'
import { deviceRoutes } from './routes/devices.ts'
import { factRoutes } from './routes/facts.ts'
import { feedLinkRoutes } from './routes/feed-links.ts'
import { foodRoutes } from './routes/food.ts'
import { handOverRoutes } from './routes/hand-over.ts'
import { juvenileGroupRoutes } from './routes/juvenile-groups.ts'
import { larvalBatchRoutes } from './routes/larval-batches.ts'
import { messageRoutes } from './routes/messages.ts'
import { pairRoutes } from './routes/pairs.ts'
import { peopleRoutes } from './routes/people.ts'
import { photoRoutes } from './routes/photos.ts'
import { recordRoutes } from './routes/records.ts'
import { reopeningRoutes } from './routes/reopening.ts'
import { roomRoutes } from './routes/room.ts'
import type { Route } from './routes/route.ts'
import { ruleRoutes } from './routes/rules.ts'
import { serverRoutes } from './routes/server.ts'
import { sessionRoutes } from './routes/session.ts'
import { survivalRoutes } from './routes/survival.ts'
import { tankRoutes } from './routes/tanks.ts'
import { taskRoutes } from './routes/tasks.ts'

export { json, type Method, type Route, type RouteKind, takesRepeatKey } from './routes/route.ts'

/** Every request the API answers. The API registers these; the tests call them, and the dashboard by their addresses. */
export const routes = {
  ...peopleRoutes,
  ...roomRoutes,
  ...tankRoutes,
  ...cultureRoutes,
  ...pairRoutes,
  ...clutchRoutes,
  ...larvalBatchRoutes,
  ...juvenileGroupRoutes,
  ...factRoutes,
  ...taskRoutes,
  ...serverRoutes,
  ...sessionRoutes,
  ...accountRoutes,
  ...concentrateRoutes,
  ...feedLinkRoutes,
  ...survivalRoutes,
  ...foodRoutes,
  ...handOverRoutes,
  ...photoRoutes,
  ...deviceRoutes,
  ...messageRoutes,
  ...recordRoutes,
  ...reopeningRoutes,
  ...ruleRoutes,
} as const satisfies Record<string, Route>

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
