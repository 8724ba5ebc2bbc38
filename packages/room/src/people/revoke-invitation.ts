import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'

export async function revokeInvitation({
  ctx,
  roomId,
  invitationId,
}: {
  ctx: Context
  roomId: Id
  invitationId: Id
}): Promise<{ ok: true }> {
  return writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const key = { roomId_id: { roomId, id: invitationId } }
    const row = await work.tx.invitation.findUnique({ where: key })
    if (!row) throw notFound('invitation')
    if (row.acceptedAt)
      throw new RoomError(
        'wrong_state',
        'This invitation was accepted already; take the person out of the room instead.',
      )
    await work.tx.invitation.update({ where: key, data: { revokedAt: ctx.now } })
    work.audit({ action: 'invitation.revoke', detail: { invitationId } })
    return { ok: true }
  })
}
