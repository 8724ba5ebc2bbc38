import type { FeedLink, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toFeedLink } from './feed-link-view.ts'

export async function listFeedLinks({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<FeedLink[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    (await tx.feedLink.findMany({ where: { roomId }, orderBy: { id: 'asc' } })).map(toFeedLink),
  )
}
