import { lockRoom, type Prisma, type Transaction } from '@fryward/store'
import { RoomError } from '../errors.ts'
import { hashToken } from '../frame/secrets.ts'

type OpenInvitation = Prisma.InvitationGetPayload<{ include: { room: true } }>

/** The room's lock first, as in every write, then the invitation as it is under the lock. */
export async function lockOpenInvitation(
  tx: Transaction,
  asked: { token: string; now: string },
): Promise<OpenInvitation> {
  const { roomId } = await findOpenInvitation(tx, asked)
  await lockRoom(tx, roomId)
  return findOpenInvitation(tx, asked)
}

export async function findOpenInvitation(
  tx: Transaction,
  { token, now }: { token: string; now: string },
): Promise<OpenInvitation> {
  const row = await tx.invitation.findUnique({ where: { tokenHash: hashToken(token) }, include: { room: true } })
  if (!row || row.revokedAt || row.acceptedAt || row.expiresAt.toISOString() <= now)
    throw new RoomError(
      'not_found',
      'This invitation is used up, withdrawn or out of date. Ask the owner of the room for a new link.',
    )
  return row
}
