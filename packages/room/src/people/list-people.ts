import type { Id, Person } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'

export async function listPeople({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Person[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    (
      await tx.membership.findMany({
        where: { roomId },
        include: { user: true },
        orderBy: [{ joinedAt: 'asc' }, { userId: 'asc' }],
      })
    ).map(toPerson),
  )
}

export function toPerson({ user, role, joinedAt }: Prisma.MembershipGetPayload<{ include: { user: true } }>): Person {
  return { userId: user.id, name: user.name, email: user.email, role, joinedAt: joinedAt.toISOString() }
}
