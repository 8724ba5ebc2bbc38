import type { NewFeedLinkSchema } from '@fryward/shared'
import { type Prisma, toDateColumn } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import { invalid, RoomError } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'
import { toFeedLink } from './feed-link-view.ts'

/** The link between a batch and a working culture, both of this room and alive; made once. */
export async function insertFeedLink(
  work: Work,
  input: z.infer<typeof NewFeedLinkSchema>,
): Promise<Prisma.FeedLinkGetPayload<null>> {
  const { roomId } = work
  const batch = await work.tx.larvalBatch.findUnique({
    where: { roomId_id: { roomId, id: input.batchId } },
    include: { subject: true },
  })
  if (!batch || batch.subject.endedAt)
    throw invalid('batchId', 'There is no such larval batch in this room now.', input.batchId)
  const culture = await work.tx.culture.findUnique({
    where: { roomId_id: { roomId, id: input.cultureId } },
    include: { subject: true },
  })
  if (!culture || culture.subject.endedAt)
    throw invalid('cultureId', 'There is no such culture in this room now.', input.cultureId)
  if (culture.isBackup)
    throw new RoomError(
      'wrong_state',
      `${culture.subject.name} is a backup and is left alone; make it a working culture first.`,
    )
  const same = await work.tx.feedLink.findFirst({
    where: { roomId, batchId: input.batchId, cultureId: input.cultureId, untilOn: null },
  })
  if (same)
    throw new RoomError('wrong_state', `${batch.subject.name} is fed from ${culture.subject.name} already.`, {
      current: toFeedLink(same),
    })
  const row = await work.tx.feedLink.create({
    data: {
      roomId,
      id: uuidv7(),
      batchId: input.batchId,
      cultureId: input.cultureId,
      fromOn: toDateColumn(input.fromOn),
    },
  })
  work.audit({
    action: 'feed_link.create',
    subjectId: input.batchId,
    detail: { ...input },
    why: `${batch.subject.name} is fed from ${culture.subject.name}`,
  })
  return row
}
