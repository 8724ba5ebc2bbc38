import type { CreatedInvitation, Id, Role } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { hashToken } from '../frame/secrets.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { toInvitation } from './invitation-view.ts'
import { userNames } from './user-names.ts'

/**
 * Makes a link. Its token is in the answer only; the server keeps the hash, and what it keeps for a repeat is without the
 * link. So that a repeat gets the same one, whoever calls makes the token of the repeat key.
 */
export async function createInvitation({
  ctx,
  roomId,
  input,
  token,
  publicUrl,
}: {
  ctx: Context
  roomId: Id
  input: { role: Role; daysValid: number }
  token: string
  publicUrl: string
}): Promise<CreatedInvitation> {
  const invitation = await writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const row = await work.tx.invitation.create({
      data: {
        roomId,
        id: uuidv7(),
        role: input.role,
        tokenHash: hashToken(token),
        createdBy: personOf(ctx.actor),
        createdAt: ctx.now,
        expiresAt: new Date(Date.parse(ctx.now) + input.daysValid * 86_400_000),
      },
    })
    work.audit({ action: 'invitation.create', detail: { invitationId: row.id, role: row.role } })
    const names = await userNames(work.tx, [row.createdBy])
    return toInvitation(row, names)
  })
  return { ...invitation, link: new URL(`/join/${token}`, publicUrl).toString() }
}
