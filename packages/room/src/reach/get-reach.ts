import type { Id, Reach } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { type Reaching, viewReach } from './reach-view.ts'

export async function getReach({
  ctx,
  roomId,
  reaching,
}: {
  ctx: Context
  roomId: Id
  reaching: Reaching
}): Promise<Reach> {
  return readInRoom({ ctx, roomId }, (read) => viewReach(read, reaching))
}
