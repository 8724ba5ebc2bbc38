import type { Id, LarvalBatch } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listLarvalBatchesInRoom } from './larval-batch-view.ts'

export async function listLarvalBatches({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<LarvalBatch[]> {
  return readInRoom({ ctx, roomId }, listLarvalBatchesInRoom)
}
