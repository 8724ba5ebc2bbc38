import type { Id, Reach } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { noSuchRoom } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'

/** What this server can do to reach somebody. */
export type Reaching = { isMailSetUp: boolean; pushKey: string }

type Scope = { tx: Transaction; ctx: Context; roomId: Id }

export async function viewReach({ tx, ctx, roomId }: Scope, reaching: Reaching): Promise<Reach> {
  const membership = await tx.membership.findUnique({
    where: { roomId_userId: { roomId, userId: personOf(ctx.actor) } },
    include: { user: { select: { email: true } }, phones: { orderBy: { id: 'asc' } } },
  })
  if (!membership) throw noSuchRoom()
  return {
    ...reaching,
    mail: membership.user.email,
    alarmsByMail: membership.alarmsByMail,
    phones: membership.phones.map(({ id, name, createdAt }) => ({ id, name, createdAt: createdAt.toISOString() })),
  }
}
