import type { Work } from '../frame/write-in-room.ts'

/** Withdraws the open invitations that somebody made, who may make none any more: nobody, they least of all, comes in by one. */
export async function endInvitationsOf({ tx, ctx, roomId, audit }: Work, userId: string): Promise<void> {
  const open = { roomId, createdBy: userId, acceptedAt: null, revokedAt: null, expiresAt: { gt: ctx.now } }
  const rows = await tx.invitation.findMany({
    where: open,
    select: { id: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  await tx.invitation.updateMany({ where: open, data: { revokedAt: ctx.now } })
  for (const { id } of rows) audit({ action: 'invitation.revoke', detail: { invitationId: id, createdBy: userId } })
}
