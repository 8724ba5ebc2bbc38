import type { Id, Person, Role } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { mayAs } from '../frame/permission.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { endInvitationsOf } from './end-invitations-of.ts'
import { toPerson } from './list-people.ts'

export async function changeRole({
  ctx,
  roomId,
  userId,
  role,
}: {
  ctx: Context
  roomId: Id
  userId: string
  role: Role
}): Promise<Person> {
  return writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const membership = await findMembership(work, userId)
    if (membership.role === 'owner' && role !== 'owner') await assertAnotherOwner(work, userId)
    const changed = await work.tx.membership.update({
      where: { roomId_userId: { roomId, userId } },
      data: { role },
      include: { user: true },
    })
    work.audit({ action: 'person.change_role', detail: { userId, from: membership.role, to: role } })
    if (!mayAs(role, 'own')) await endInvitationsOf(work, userId)
    return toPerson(changed)
  })
}

export async function findMembership(work: Work, userId: string): Promise<{ role: Role }> {
  const membership = await work.tx.membership.findUnique({ where: { roomId_userId: { roomId: work.roomId, userId } } })
  if (!membership) throw notFound('person')
  return membership
}

export async function assertAnotherOwner(work: Work, userId: string): Promise<void> {
  const others = await work.tx.membership.count({
    where: { roomId: work.roomId, role: 'owner', userId: { not: userId } },
  })
  if (others === 0)
    throw new RoomError('wrong_state', 'A room keeps at least one owner; make somebody else an owner first.')
}
