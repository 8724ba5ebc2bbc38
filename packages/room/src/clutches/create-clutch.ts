import type { Clutch, Id, NewClutch } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getClutchInRoom } from './clutch-view.ts'
import { insertClutch } from './insert-clutch.ts'

export async function createClutch({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: NewClutch
}): Promise<Clutch> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const id = await insertClutch(work, { input })
      return id
    },
    getClutchInRoom,
  )
}
