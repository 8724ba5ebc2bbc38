import type { Id, JuvenileGroup, NewJuvenileGroup } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { insertJuvenileGroup } from './insert-juvenile-group.ts'
import { getJuvenileGroupInRoom } from './juvenile-group-view.ts'

export async function createJuvenileGroup({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: NewJuvenileGroup
}): Promise<JuvenileGroup> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const id = await insertJuvenileGroup(work, { input })
      return id
    },
    getJuvenileGroupInRoom,
  )
}
