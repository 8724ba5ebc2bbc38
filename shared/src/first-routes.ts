import { clutchRoutes } from './routes/clutches.ts'
import { cultureRoutes } from './routes/cultures.ts'
import { factRoutes } from './routes/facts.ts'
import { juvenileGroupRoutes } from './routes/juvenile-groups.ts'
import { larvalBatchRoutes } from './routes/larval-batches.ts'
import { pairRoutes } from './routes/pairs.ts'
import { peopleRoutes } from './routes/people.ts'
import { roomRoutes } from './routes/room.ts'
import type { Route } from './routes/route.ts'
import { tankRoutes } from './routes/tanks.ts'
import { taskRoutes } from './routes/tasks.ts'

/** What a page of a room asks for before anything is tapped: who is in, the room, its day, and what lives in it. */
export const firstRoutes = {
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
} as const satisfies Record<string, Route>
