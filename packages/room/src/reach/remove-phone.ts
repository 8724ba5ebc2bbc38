import type { Id, Reach } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { type Reaching, viewReach } from './reach-view.ts'

export async function removePhone({
  ctx,
  roomId,
  phoneId,
  reaching,
}: {
  ctx: Context
  roomId: Id
  phoneId: Id
  reaching: Reaching
}): Promise<Reach> {
  return writeInRoom(
    { ctx, roomId, permission: 'read', changesDay: false },
    async (work) => {
      const own = { roomId, id: phoneId, userId: personOf(ctx.actor) }
      const { count } = await work.tx.pushPhone.deleteMany({ where: own })
      if (count === 0) throw notFound('phone')
      work.audit({ action: 'phone.remove', detail: { phoneId } })
    },
    (work) => viewReach(work, reaching),
  )
}
