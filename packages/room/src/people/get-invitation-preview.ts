import type { InvitationPreviewSchema } from '@fryward/shared'
import { inSnapshot } from '@fryward/store'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { findOpenInvitation } from './open-invitation.ts'
import { nameOf, userNames } from './user-names.ts'

export async function getInvitationPreview({
  ctx,
  token,
}: {
  ctx: Context
  token: string
}): Promise<z.infer<typeof InvitationPreviewSchema>> {
  return inSnapshot(ctx.database, async (tx) => {
    const row = await findOpenInvitation(tx, { token, now: ctx.now })
    const names = await userNames(tx, [row.createdBy])
    return {
      roomName: row.room.name,
      role: row.role,
      invitedByName: nameOf(names, row.createdBy),
      expiresAt: row.expiresAt.toISOString(),
    }
  })
}
