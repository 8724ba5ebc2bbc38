import type { Id, Reach } from '@fryward/shared'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { type Reaching, viewReach } from './reach-view.ts'

export async function changeReach({
  ctx,
  roomId,
  reaching,
  input,
}: {
  ctx: Context
  roomId: Id
  reaching: Reaching
  input: { alarmsByMail: boolean }
}): Promise<Reach> {
  return writeInRoom(
    { ctx, roomId, permission: 'read', changesDay: false },
    async (work) => {
      await work.tx.membership.update({
        where: { roomId_userId: { roomId, userId: personOf(ctx.actor) } },
        data: { alarmsByMail: input.alarmsByMail },
      })
      work.audit({ action: 'reach.change', detail: { alarmsByMail: input.alarmsByMail } })
    },
    (work) => viewReach(work, reaching),
  )
}
