import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { transact } from '../frame/transact.ts'
import { insertAccount, type NewAccount } from './insert-account.ts'
import { join } from './join.ts'
import { lockOpenInvitation } from './open-invitation.ts'

/** Makes an account and joins the room with it, in one transaction. */
export async function joinByInvitation({
  ctx,
  token,
  account,
}: {
  ctx: Context
  token: string
  account: NewAccount
}): Promise<{ roomId: Id }> {
  return transact(ctx, async (tx) => {
    const row = await lockOpenInvitation(tx, { token, now: ctx.now })
    const userId = await insertAccount(tx, { account, now: ctx.now })
    return join({ tx, ctx: { ...ctx, actor: { kind: 'person', userId, name: account.name } }, row, userId })
  })
}
