import type { Id, LarvalBatch, NewLarvalBatch } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { insertLarvalBatch } from './insert-larval-batch.ts'
import { getLarvalBatchInRoom } from './larval-batch-view.ts'

export async function createLarvalBatch({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: NewLarvalBatch
}): Promise<LarvalBatch> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const id = await insertLarvalBatch(work, { input })
      return id
    },
    getLarvalBatchInRoom,
  )
}
