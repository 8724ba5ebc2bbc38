import type { ChangeLarvalBatchSchema, Id, LarvalBatch } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertTank } from '../pairs/create-pair.ts'
import { getLarvalBatchInRoom } from './larval-batch-view.ts'

export async function changeLarvalBatch({
  ctx,
  roomId,
  batchId,
  input,
}: {
  ctx: Context
  roomId: Id
  batchId: Id
  input: z.infer<typeof ChangeLarvalBatchSchema>
}): Promise<LarvalBatch> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getLarvalBatchInRoom(work, batchId)
      assertFresh(before, input.version, before.name)
      if (input.tankId !== undefined) await assertTank(work, input.tankId)
      await changeSubject(work, { id: batchId, name: input.name, note: input.note })
      if (input.tankId !== undefined)
        await work.tx.larvalBatch.update({
          where: { roomId_id: { roomId, id: batchId } },
          data: { tankId: input.tankId },
        })
      work.audit({
        action: 'larval_batch.change',
        subjectId: batchId,
        detail: definedFields({ name: input.name, note: input.note, tankId: input.tankId }),
        why: `${before.name} was changed`,
      })
    },
    (work) => getLarvalBatchInRoom(work, batchId),
  )
}
