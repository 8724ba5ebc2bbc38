import type { Id, Tank } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { endSubject } from '../frame/subject-row.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { findInhabitant } from './inhabitant.ts'
import { getTankInRoom } from './tank-view.ts'

/** Takes a tank out of use once nothing lives in it. */
export async function endTank({
  ctx,
  roomId,
  tankId,
  input,
}: {
  ctx: Context
  roomId: Id
  tankId: Id
  input: { reason: string; version: number }
}): Promise<Tank> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getTankInRoom(work, tankId)
      assertFresh(before, input.version, before.name)
      const inside = await findInhabitant(work, tankId)
      if (inside) throw new RoomError('wrong_state', `${inside} lives in ${before.name}; move or end it first.`)
      await endSubject(work, { id: tankId, reason: input.reason, how: 'taken out of use' })
    },
    (work) => getTankInRoom(work, tankId),
  )
}
