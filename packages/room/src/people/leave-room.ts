import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertAnotherOwner } from './change-role.ts'
import { endInvitationsOf } from './end-invitations-of.ts'

/** Takes oneself out of the room; what one recorded stays. */
export async function leaveRoom({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<{ ok: true }> {
  return writeInRoom({ ctx, roomId, permission: 'read', changesDay: false }, async (work) => {
    const userId = personOf(ctx.actor)
    if (work.role === 'owner') await assertAnotherOwner(work, userId)
    await work.tx.membership.delete({ where: { roomId_userId: { roomId, userId } } })
    work.audit({ action: 'person.leave', detail: { userId, role: work.role } })
    await endInvitationsOf(work, userId)
    return { ok: true }
  })
}
