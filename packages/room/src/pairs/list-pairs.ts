import type { Id, Pair } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listPairsInRoom } from './pair-view.ts'

export async function listPairs({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Pair[]> {
  return readInRoom({ ctx, roomId }, listPairsInRoom)
}
