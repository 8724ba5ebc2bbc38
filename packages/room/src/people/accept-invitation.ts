import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { findAnswer } from '../frame/idempotency.ts'
import { personOf } from '../frame/person-of.ts'
import { transact } from '../frame/transact.ts'
import { join } from './join.ts'
import { lockOpenInvitation } from './open-invitation.ts'

export async function acceptInvitation({ ctx, token }: { ctx: Context; token: string }): Promise<{ roomId: Id }> {
  return transact(ctx, async (tx) => {
    const replay = await findAnswer<{ roomId: Id }>(tx, ctx)
    if (replay) return replay.answer
    const row = await lockOpenInvitation(tx, { token, now: ctx.now })
    return join({ tx, ctx, row, userId: personOf(ctx.actor) })
  })
}
