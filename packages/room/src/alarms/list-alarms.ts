import type { Alarm, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { viewAlarms } from './alarm-view.ts'

export async function listAlarms({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Alarm[]> {
  return readInRoom({ ctx, roomId }, (read) => viewAlarms(read))
}
