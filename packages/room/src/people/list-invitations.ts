import type { Id, Invitation } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toInvitation } from './invitation-view.ts'
import { userNames } from './user-names.ts'

export async function listInvitations({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Invitation[]> {
  return readInRoom({ ctx, roomId, permission: 'own' }, async ({ tx }) => {
    const orderBy = [{ createdAt: 'desc' as const }, { id: 'desc' as const }]
    const rows = await tx.invitation.findMany({ where: { roomId }, orderBy, take: 100 })
    const names = await userNames(
      tx,
      rows.flatMap((row) => [row.createdBy, ...(row.acceptedBy ? [row.acceptedBy] : [])]),
    )
    return rows.map((row) => toInvitation(row, names))
  })
}
