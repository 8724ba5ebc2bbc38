import type { Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { hashToken } from '../frame/secrets.ts'

/** common practice: long enough for a slow mail, short enough that a mail found later opens nothing. */
export const resetValidMs = 3_600_000
export const inAnHour = ({ now }: Context): Date => new Date(Date.parse(now) + resetValidMs)

type OpenReset = { email: string; userId: string; expiresAt: Date }

/** @throws RoomError `not_found` for a link that was used, is out of date or never was. */
export async function findOpenReset(
  tx: Transaction,
  { token, now }: { token: string; now: string },
): Promise<OpenReset> {
  const row = await tx.passwordReset.findUnique({ where: { tokenHash: hashToken(token) }, include: { user: true } })
  if (!row?.user || row.expiresAt.toISOString() <= now)
    throw new RoomError(
      'not_found',
      'This link was used before or is more than an hour old. Ask for a new password once more.',
    )
  return { email: row.user.email, userId: row.user.id, expiresAt: row.expiresAt }
}

export async function getPasswordReset({
  ctx,
  token,
}: {
  ctx: Context
  token: string
}): Promise<{ email: string; expiresAt: string }> {
  const { email, expiresAt } = await findOpenReset(ctx.database.prisma, { token, now: ctx.now })
  return { email, expiresAt: expiresAt.toISOString() }
}
