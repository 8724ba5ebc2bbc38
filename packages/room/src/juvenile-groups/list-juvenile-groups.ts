import type { Id, JuvenileGroup } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listJuvenileGroupsInRoom } from './juvenile-group-view.ts'

export async function listJuvenileGroups({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<JuvenileGroup[]> {
  return readInRoom({ ctx, roomId }, listJuvenileGroupsInRoom)
}
