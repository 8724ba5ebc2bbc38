import type { CreatedInvitation, Id, Invitation, InvitationPreviewSchema, Role } from '@fryward/shared'
import { inTransaction, lockRoom, type Prisma, type Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { findAnswer } from '../frame/idempotency.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { transact } from '../frame/transact.ts'
import { workInRoom, writeInRoom } from '../frame/write-in-room.ts'
import { personOf } from '../tasks/sign-off-task.ts'
import { insertAccount, type NewAccount } from './insert-account.ts'
import { hashToken } from './secrets.ts'
import { nameOf, userNames } from './user-names.ts'

type InvitationRow = Prisma.InvitationGetPayload<object>

function toInvitation(row: InvitationRow, names: ReadonlyMap<string, string>): Invitation {
  return {
    id: row.id,
    role: row.role,
    createdByName: nameOf(names, row.createdBy),
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt.toISOString(),
    acceptedAt: row.acceptedAt?.toISOString() ?? null,
    acceptedByName: row.acceptedBy ? nameOf(names, row.acceptedBy) : null,
    revokedAt: row.revokedAt?.toISOString() ?? null,
  }
}

export async function listInvitations({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Invitation[]> {
  return readInRoom({ ctx, roomId, permission: 'own' }, async ({ tx }) => {
    const rows = await tx.invitation.findMany({ where: { roomId }, orderBy: { createdAt: 'desc' }, take: 100 })
    const names = await userNames(
      tx,
      rows.flatMap((row) => [row.createdBy, ...(row.acceptedBy ? [row.acceptedBy] : [])]),
    )
    return rows.map((row) => toInvitation(row, names))
  })
}

/**
 * Makes a link. Its token is in the answer only; the server keeps the hash, and what it keeps for a repeat is without the
 * link. So that a repeat gets the same one, whoever calls makes the token of the repeat key.
 */
export async function createInvitation({
  ctx,
  roomId,
  input,
  token,
  publicUrl,
}: {
  ctx: Context
  roomId: Id
  input: { role: Role; daysValid: number }
  token: string
  publicUrl: string
}): Promise<CreatedInvitation> {
  const invitation = await writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const row = await work.tx.invitation.create({
      data: {
        roomId,
        id: uuidv7(),
        role: input.role,
        tokenHash: hashToken(token),
        createdBy: personOf(ctx.actor),
        createdAt: ctx.now,
        expiresAt: new Date(Date.parse(ctx.now) + input.daysValid * 86_400_000),
      },
    })
    work.audit({ action: 'invitation.create', detail: { invitationId: row.id, role: row.role } })
    const names = await userNames(work.tx, [row.createdBy])
    return toInvitation(row, names)
  })
  return { ...invitation, link: new URL(`/join/${token}`, publicUrl).toString() }
}

export async function revokeInvitation({
  ctx,
  roomId,
  invitationId,
}: {
  ctx: Context
  roomId: Id
  invitationId: Id
}): Promise<{ ok: true }> {
  return writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const key = { roomId_id: { roomId, id: invitationId } }
    const row = await work.tx.invitation.findUnique({ where: key })
    if (!row) throw notFound('invitation')
    if (row.acceptedAt)
      throw new RoomError(
        'wrong_state',
        'This invitation was accepted already; take the person out of the room instead.',
      )
    await work.tx.invitation.update({ where: key, data: { revokedAt: ctx.now } })
    work.audit({ action: 'invitation.revoke', detail: { invitationId } })
    return { ok: true }
  })
}

export async function getInvitationPreview({
  ctx,
  token,
}: {
  ctx: Context
  token: string
}): Promise<z.infer<typeof InvitationPreviewSchema>> {
  return inTransaction(ctx.database, async (tx) => {
    const row = await findOpenInvitation(tx, { token, now: ctx.now })
    const names = await userNames(tx, [row.createdBy])
    return {
      roomName: row.room.name,
      role: row.role,
      invitedByName: nameOf(names, row.createdBy),
      expiresAt: row.expiresAt.toISOString(),
    }
  })
}

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

export async function acceptInvitation({ ctx, token }: { ctx: Context; token: string }): Promise<{ roomId: Id }> {
  return transact(ctx, async (tx) => {
    const replay = await findAnswer<{ roomId: Id }>(tx, ctx)
    if (replay) return replay.answer
    const row = await lockOpenInvitation(tx, { token, now: ctx.now })
    return join({ tx, ctx, row, userId: personOf(ctx.actor) })
  })
}

async function join({
  tx,
  ctx,
  row,
  userId,
}: {
  tx: Transaction
  ctx: Context
  row: InvitationRow
  userId: string
}): Promise<{ roomId: Id }> {
  const { roomId } = row
  if (await tx.membership.findUnique({ where: { roomId_userId: { roomId, userId } } }))
    throw new RoomError('wrong_state', 'You are in this room already.')
  await assertNameIsFree(tx, { roomId, userId })
  await tx.membership.create({ data: { roomId, userId, role: row.role, joinedAt: ctx.now } })
  // The room's lock is held: two people with one link cannot both get in.
  await tx.invitation.update({
    where: { roomId_id: { roomId, id: row.id } },
    data: { acceptedAt: ctx.now, acceptedBy: userId },
  })
  return workInRoom({ tx, ctx, roomId, permission: 'read', changesDay: false }, async (work) => {
    work.audit({ action: 'person.join', detail: { userId, role: row.role } })
    return { roomId }
  })
}

/** Two people of one name could not be told apart in anything that either of them wrote. */
async function assertNameIsFree(tx: Transaction, { roomId, userId }: { roomId: Id; userId: string }): Promise<void> {
  const { name } = await tx.user.findUniqueOrThrow({ where: { id: userId }, select: { name: true } })
  const same = await tx.membership.findFirst({
    where: { roomId, user: { name: { equals: name, mode: 'insensitive' } } },
  })
  if (same)
    throw new RoomError(
      'conflict',
      `Somebody in this room is called ${name} already. Join with a name that tells you apart.`,
      {
        fields: [{ path: 'name', message: 'a name that nobody else in the room has', received: name }],
      },
    )
}

/** The room's lock first, as in every write, then the invitation as it is under the lock. */
async function lockOpenInvitation(tx: Transaction, asked: { token: string; now: string }) {
  const { roomId } = await findOpenInvitation(tx, asked)
  await lockRoom(tx, roomId)
  return findOpenInvitation(tx, asked)
}

async function findOpenInvitation(tx: Transaction, { token, now }: { token: string; now: string }) {
  const row = await tx.invitation.findUnique({ where: { tokenHash: hashToken(token) }, include: { room: true } })
  if (!row || row.revokedAt || row.acceptedAt || row.expiresAt.toISOString() <= now)
    throw new RoomError(
      'not_found',
      'This invitation is used up, withdrawn or out of date. Ask the owner of the room for a new link.',
    )
  return row
}
