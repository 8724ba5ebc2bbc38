import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'

/** Ends one of somebody's own sessions. */
export async function endSession({ ctx, sessionId }: { ctx: Context; sessionId: string }): Promise<{ ok: true }> {
  const { count } = await ctx.database.prisma.session.deleteMany({
    where: { id: sessionId, userId: personOf(ctx.actor) },
  })
  if (count === 0) throw new RoomError('not_found', 'You are not signed in there any more.')
  return { ok: true }
}

/** Ends all of somebody's sessions but the one that asks. */
export async function endOtherSessions({ ctx }: { ctx: Context }): Promise<{ ok: true }> {
  const userId = personOf(ctx.actor)
  const here = ctx.actor.kind === 'person' ? ctx.actor.sessionId : undefined
  await ctx.database.prisma.session.deleteMany({
    where: { userId, id: here === undefined ? undefined : { not: here } },
  })
  return { ok: true }
}
