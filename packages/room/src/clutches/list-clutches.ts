import type { Clutch, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listClutchesInRoom } from './clutch-view.ts'

export async function listClutches({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Clutch[]> {
  return readInRoom({ ctx, roomId }, listClutchesInRoom)
}
