import type { FeedLink, Id, NewFeedLinkSchema } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { toFeedLink } from './feed-link-view.ts'
import { insertFeedLink } from './insert-feed-link.ts'

/** "This batch is fed from this culture", from a date on. */
export async function createFeedLink({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: z.infer<typeof NewFeedLinkSchema>
}): Promise<FeedLink> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) =>
    toFeedLink(await insertFeedLink(work, input)),
  )
}
