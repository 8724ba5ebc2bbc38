import { inTransaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { hashToken } from '../frame/secrets.ts'
import { findOpenReset } from './open-reset.ts'
import { setPassword } from './set-password.ts'
import { insertTry, type Knock } from './sign-in-tries.ts'

type Given = { ctx: Context; token: string; passwordHash: string; knock: Omit<Knock, 'email'> }

/**
 * Gives the account of a link a new password and signs it out everywhere; its second factor stays, for a mailbox alone is to
 * open nothing that a code is asked for.
 * @returns whose it was.
 */
export async function giveNewPassword({ ctx, token, passwordHash, knock }: Given): Promise<{ email: string }> {
  return inTransaction(ctx.database, async (tx) => {
    // Of two who bring the same link at once, the second waits here and finds it used.
    await tx.$queryRaw`SELECT id FROM password_reset WHERE token_hash = ${hashToken(token)} FOR UPDATE`
    const { userId, email } = await findOpenReset(tx, { token, now: ctx.now })
    await setPassword(tx, { userId, passwordHash, now: ctx.now })
    await tx.user.update({ where: { id: userId }, data: { updatedAt: ctx.now } })
    await insertTry(tx, { now: ctx.now, knock: { ...knock, email }, outcome: 'password_reset' })
    return { email }
  })
}
