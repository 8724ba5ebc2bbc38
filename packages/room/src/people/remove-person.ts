import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertAnotherOwner, findMembership } from './change-role.ts'
import { endInvitationsOf } from './end-invitations-of.ts'

/** Takes somebody out of the room, and with them the links that they made; what they recorded stays. */
export async function removePerson({
  ctx,
  roomId,
  userId,
}: {
  ctx: Context
  roomId: Id
  userId: string
}): Promise<{ ok: true }> {
  return writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const membership = await findMembership(work, userId)
    if (membership.role === 'owner') await assertAnotherOwner(work, userId)
    await work.tx.membership.delete({ where: { roomId_userId: { roomId, userId } } })
    work.audit({ action: 'person.remove', detail: { userId, role: membership.role } })
    await endInvitationsOf(work, userId)
    return { ok: true }
  })
}
