import type { Device, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { viewDevices } from './device-view.ts'

export async function listDevices({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Device[]> {
  return readInRoom({ ctx, roomId }, (read) => viewDevices(read))
}
