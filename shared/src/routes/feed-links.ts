import * as z from 'zod/mini'
import { EndFeedLinkSchema, FeedLinkSchema, FeedTodaySchema, NewFeedLinkSchema } from '../larval-batch.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('feed links')

export const feedLinkRoutes = {
  listFeedLinks: get('/rooms/:roomId/feed-links', {
    summary: 'Which batch is fed from which culture',
    permission: 'read',
    params: inRoom,
    response: z.array(FeedLinkSchema),
  }),
  listFeedsToday: get('/rooms/:roomId/feeds-today', {
    summary: 'What each batch eats today, and of which culture or hatch vessel',
    permission: 'read',
    params: inRoom,
    response: z.array(FeedTodaySchema),
  }),
  createFeedLink: write('POST', '/rooms/:roomId/feed-links', {
    summary: 'Feed a batch from a culture',
    permission: 'manage',
    params: inRoom,
    body: NewFeedLinkSchema,
    response: FeedLinkSchema,
  }),
  endFeedLink: write('PATCH', '/rooms/:roomId/feed-links/:feedLinkId', {
    summary: 'Stop feeding a batch from a culture',
    permission: 'manage',
    params: { ...inRoom, feedLinkId: IdSchema },
    body: EndFeedLinkSchema,
    response: FeedLinkSchema,
  }),
}
