import type { Id, LarvalBatch } from '@fryward/shared'
import type { Context } from '../context.ts'
import { endLinksOf } from '../feed-links/end-links-of.ts'
import { endSubject } from '../frame/subject-row.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getLarvalBatchInRoom } from './larval-batch-view.ts'

/** Ends a batch (lost, moved on as settled fish, given up); cultures no longer feed it. */
export async function endLarvalBatch({
  ctx,
  roomId,
  batchId,
  input,
}: {
  ctx: Context
  roomId: Id
  batchId: Id
  input: { reason: string; version: number }
}): Promise<LarvalBatch> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getLarvalBatchInRoom(work, batchId)
      assertFresh(before, input.version, before.name)
      const links = await endLinksOf(work, { batchId })
      await endSubject(work, { id: batchId, reason: input.reason, detail: { links } })
    },
    (work) => getLarvalBatchInRoom(work, batchId),
  )
}
