import { accountRoutes } from './routes/account.ts'
import { concentrateRoutes } from './routes/concentrates.ts'
import { deviceRoutes } from './routes/devices.ts'
import { feedLinkRoutes } from './routes/feed-links.ts'
import { foodRoutes } from './routes/food.ts'
import { handOverRoutes } from './routes/hand-over.ts'
import { messageRoutes } from './routes/messages.ts'
import { photoRoutes } from './routes/photos.ts'
import { recordRoutes } from './routes/records.ts'
import { reopeningRoutes } from './routes/reopening.ts'
import type { Route } from './routes/route.ts'
import { ruleRoutes } from './routes/rules.ts'
import { serverRoutes } from './routes/server.ts'
import { sessionRoutes } from './routes/session.ts'
import { survivalRoutes } from './routes/survival.ts'

/** The rest: their shapes may come after a page. */
export const laterRoutes = {
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
