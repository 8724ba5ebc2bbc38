import type { Session } from '@fryward/shared'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'

/** Where somebody is signed in, the browser last seen first. */
export async function listSessions({ ctx }: { ctx: Context }): Promise<Session[]> {
  const userId = personOf(ctx.actor)
  const here = ctx.actor.kind === 'person' ? ctx.actor.sessionId : undefined
  const rows = await ctx.database.prisma.session.findMany({
    where: { userId, expiresAt: { gt: ctx.now } },
    orderBy: [{ updatedAt: 'desc' }, { id: 'desc' }],
    take: 200,
  })
  return rows.map((row) => ({
    id: row.id,
    signedInAt: row.createdAt.toISOString(),
    lastSeenAt: row.updatedAt.toISOString(),
    address: row.ipAddress || null,
    browser: row.userAgent || null,
    isThisOne: row.id === here,
  }))
}
