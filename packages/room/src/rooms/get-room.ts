import type { Id, Room } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { getRoomRow } from './room-view.ts'

export async function getRoom({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Room> {
  return readInRoom({ ctx, roomId }, getRoomRow)
}
