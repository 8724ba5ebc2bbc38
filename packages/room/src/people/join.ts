import type { Id } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { workInRoom } from '../frame/write-in-room.ts'
import type { InvitationRow } from './invitation-view.ts'

/** The last steps of whoever comes by an invitation that is locked and open. */
export async function join({
  tx,
  ctx,
  row,
  userId,
}: {
  tx: Transaction
  ctx: Context
  row: InvitationRow
  userId: string
}): Promise<{ roomId: Id }> {
  const { roomId } = row
  if (await tx.membership.findUnique({ where: { roomId_userId: { roomId, userId } } }))
    throw new RoomError('wrong_state', 'You are in this room already.')
  await assertNameIsFree(tx, { roomId, userId })
  await tx.membership.create({ data: { roomId, userId, role: row.role, joinedAt: ctx.now } })
  // The room's lock is held: two people with one link cannot both get in.
  await tx.invitation.update({
    where: { roomId_id: { roomId, id: row.id } },
    data: { acceptedAt: ctx.now, acceptedBy: userId },
  })
  return workInRoom({ tx, ctx, roomId, permission: 'read', changesDay: false }, async (work) => {
    work.audit({ action: 'person.join', detail: { userId, role: row.role } })
    return { roomId }
  })
}

/** Two people of one name could not be told apart in anything that either of them wrote. */
async function assertNameIsFree(tx: Transaction, { roomId, userId }: { roomId: Id; userId: string }): Promise<void> {
  const { name } = await tx.user.findUniqueOrThrow({ where: { id: userId }, select: { name: true } })
  const same = await tx.membership.findFirst({
    where: { roomId, user: { name: { equals: name, mode: 'insensitive' } } },
  })
  if (same)
    throw new RoomError(
      'conflict',
      `Somebody in this room is called ${name} already. Join with a name that tells you apart.`,
      {
        fields: [{ path: 'name', message: 'a name that nobody else in the room has', received: name }],
      },
    )
}
