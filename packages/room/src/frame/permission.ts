import { type Permission, permissionsOfRole, type Role } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import type { Actor, Context } from '../context.ts'
import { noSuchRoom, RoomError } from '../errors.ts'

export type RoomPermission = Exclude<Permission, 'anyone' | 'signed_in' | 'device' | 'own_server'>

const asks: Record<RoomPermission, string> = {
  read: 'somebody of this room',
  sign_off: 'a stand-in, a caretaker or an owner',
  record: 'a stand-in, a caretaker or an owner',
  manage: 'a caretaker or an owner',
  own: 'an owner',
}

/** What a role may do, as the contract says it. */
export function mayAs(role: Role, permission: Permission): boolean {
  const allowed: readonly Permission[] = permissionsOfRole[role]
  return allowed.includes(permission)
}

/** The actor's role in the room; a stranger learns nothing, somebody without the right is told who may. */
export async function assertMay({
  tx,
  actor,
  roomId,
  permission,
}: {
  tx: Transaction
  actor: Actor
  roomId: string
  permission: RoomPermission
}): Promise<Role> {
  if (actor.kind === 'system') return 'owner'
  // A device posts readings, and knows of nothing else.
  if (actor.kind === 'device') throw noSuchRoom()
  const membership = await tx.membership.findUnique({ where: { roomId_userId: { roomId, userId: actor.userId } } })
  if (!membership) throw noSuchRoom()
  if (!mayAs(membership.role, permission))
    throw new RoomError(
      'not_allowed',
      `This is for ${asks[permission]}; you are here as ${membership.role.replace('_', '-')}.`,
    )
  if (permission === 'own') await assertSecondFactor(tx, membership)
  return membership.role
}

async function assertSecondFactor(tx: Transaction, { roomId, userId }: { roomId: string; userId: string }) {
  const { room, user } = await tx.membership.findUniqueOrThrow({
    where: { roomId_userId: { roomId, userId } },
    select: { room: { select: { asksSecondFactor: true } }, user: { select: { twoFactorEnabled: true } } },
  })
  if (room.asksSecondFactor && !user.twoFactorEnabled)
    throw new RoomError(
      'not_allowed',
      'This room asks its owners for a second factor. Set one up under More, Your account, then do this again.',
    )
}

/** The same before a request is read, where there is no transaction yet; the write asks again under the room's lock. */
export async function assertMayInRoom({
  ctx,
  ...asked
}: {
  ctx: Context
  roomId: string
  permission: RoomPermission
}): Promise<void> {
  await assertMay({ tx: ctx.database.prisma, actor: ctx.actor, ...asked })
}
