import { inTransaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { setPassword } from './set-password.ts'

type Reset = { name: string; hadSecondFactor: boolean }

/**
 * Gives an account another password, ends its sessions and takes its second factor off. For whoever has the server itself
 * in their hands; no route leads here.
 */
export async function resetPassword({
  ctx,
  email,
  passwordHash,
}: {
  ctx: Context
  email: string
  passwordHash: string
}): Promise<Reset> {
  return inTransaction(ctx.database, async (tx) => {
    const user = await tx.user.findUnique({ where: { email: email.toLowerCase() } })
    if (!user) throw new RoomError('not_found', `There is no account with the email ${email}. Check how it is written.`)
    const userId = user.id
    await setPassword(tx, { userId, passwordHash, now: ctx.now })
    await tx.twoFactor.deleteMany({ where: { userId } })
    await tx.user.update({ where: { id: userId }, data: { twoFactorEnabled: false, updatedAt: ctx.now } })
    return { name: user.name, hadSecondFactor: user.twoFactorEnabled === true }
  })
}
