import type { ResetLink } from '@fryward/shared'
import { inTransaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { hashToken, newToken } from '../frame/secrets.ts'
import { inAnHour } from './open-reset.ts'
import { insertTry, type Knock } from './sign-in-tries.ts'

/** Where the page for a new password stands. */
export const resetLink = (publicUrl: string, token: string): string =>
  new URL(`/new-password/${token}`, publicUrl).toString()

type Asked = { ctx: Context; userId: string; publicUrl: string; knock: Omit<Knock, 'email'> }

/** A link that the owner of the server hands on where no mail goes out; on record for whoever it is for. */
export async function createResetLink({ ctx, userId, publicUrl, knock }: Asked): Promise<ResetLink> {
  return inTransaction(ctx.database, async (tx) => {
    const user = await tx.user.findUnique({ where: { id: userId } })
    if (!user) throw new RoomError('not_found', 'There is no such account. Look at the list of people again.')
    const [token, expiresAt] = [newToken(), inAnHour(ctx)]
    const made = { id: uuidv7(), email: user.email, address: knock.address, userId, expiresAt }
    await tx.passwordReset.create({ data: { ...made, tokenHash: hashToken(token) } })
    await insertTry(tx, { now: ctx.now, knock: { ...knock, email: user.email }, outcome: 'reset_link_made' })
    return { link: resetLink(publicUrl, token), expiresAt: expiresAt.toISOString() }
  })
}
