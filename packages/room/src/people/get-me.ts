import type { Me } from '@fryward/shared'
import { inSnapshot, type Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'

export async function getMe({ ctx }: { ctx: Context }): Promise<Me> {
  return inSnapshot(ctx.database, async (tx) => {
    const userId = personOf(ctx.actor)
    const user = await tx.user.findUnique({ where: { id: userId } })
    if (!user) throw new RoomError('not_signed_in', 'Sign in again: this account is gone.')
    const memberships = await tx.membership.findMany({
      where: { userId },
      include: { room: true },
      orderBy: [{ joinedAt: 'asc' }, { roomId: 'asc' }],
    })
    return {
      user: { id: user.id, name: user.name, email: user.email, hasSecondFactor: user.twoFactorEnabled === true },
      canCreateRooms: await mayCreateRooms(tx, userId),
      ownsServer: await ownsServer(tx, userId),
      rooms: memberships.map(({ room, role }) => ({ id: room.id, name: room.name, role, timeZone: room.timeZone })),
    }
  })
}

/** Whoever claimed the server, or owns a room on it. */
export async function mayCreateRooms(tx: Transaction, userId: string): Promise<boolean> {
  if (await ownsServer(tx, userId)) return true
  return (await tx.membership.findFirst({ where: { userId, role: 'owner' } })) !== null
}

async function ownsServer(tx: Transaction, userId: string): Promise<boolean> {
  return (await tx.server.findUnique({ where: { id: 1 } }))?.claimedBy === userId
}

/** What concerns every room and every account is for whoever claimed the server and nobody else. */
export async function assertOwnsServer({ ctx }: { ctx: Context }): Promise<void> {
  const isOwner = await inSnapshot(ctx.database, (tx) => ownsServer(tx, personOf(ctx.actor)))
  if (!isOwner)
    throw new RoomError('not_allowed', 'This concerns every room on this server; it is for whoever claimed the server.')
}
