import type { Actor, Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { hashToken } from '../frame/secrets.ts'

/** The device that brings this token. @throws RoomError not_signed_in where none does. */
export async function deviceByToken({
  ctx,
  token,
}: {
  ctx: Pick<Context, 'database'>
  token: string
}): Promise<Extract<Actor, { kind: 'device' }>> {
  const row = await ctx.database.prisma.device.findUnique({ where: { tokenHash: hashToken(token) } })
  if (!row || row.revokedAt)
    throw new RoomError('not_signed_in', 'This token opens nothing here. Take the one that its device was given.')
  return { kind: 'device', roomId: row.roomId, deviceId: row.id, name: row.name }
}
