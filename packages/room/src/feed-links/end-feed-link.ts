import type { EndFeedLinkSchema, FeedLink, Id } from '@fryward/shared'
import { fromDateColumn, toDateColumn } from '@fryward/store'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { invalid, notFound } from '../errors.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { toFeedLink } from './feed-link-view.ts'

/** The batch is fed from this culture up to and including `untilOn`. */
export async function endFeedLink({
  ctx,
  roomId,
  feedLinkId,
  input,
}: {
  ctx: Context
  roomId: Id
  feedLinkId: Id
  input: z.infer<typeof EndFeedLinkSchema>
}): Promise<FeedLink> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const key = { roomId_id: { roomId, id: feedLinkId } }
    const row = await work.tx.feedLink.findUnique({ where: key })
    if (!row) throw notFound('feed link')
    assertFresh(toFeedLink(row), input.version, 'This feed link')
    if (input.untilOn < fromDateColumn(row.fromOn))
      throw invalid('untilOn', `It began on ${fromDateColumn(row.fromOn)}; it cannot end before.`, input.untilOn)
    const ended = await work.tx.feedLink.update({
      where: key,
      data: { untilOn: toDateColumn(input.untilOn), version: { increment: 1 } },
    })
    work.audit({
      action: 'feed_link.end',
      subjectId: row.batchId,
      detail: { feedLinkId, untilOn: input.untilOn },
      why: 'a feed link was ended',
    })
    return toFeedLink(ended)
  })
}
