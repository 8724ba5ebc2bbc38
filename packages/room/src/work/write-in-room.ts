import type { Id, Role } from '@fryward/shared'
import { advanceRevision, inSnapshot, inTransaction, notifyRoom, type Prisma, type Transaction } from '@fryward/store'
import { actorName, actorUserId, type Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { findAnswer, keepAnswer } from './idempotency.ts'
import { assertMay, type RoomPermission } from './permission.ts'

/** What a write works with: one transaction that holds the room's lock, and the revision it commits as. */
export type Work = {
  tx: Transaction
  ctx: Context
  roomId: Id
  role: Role
  revision: number
  /** Every write says what it did; a write that says nothing is refused. */
  audit: (entry: AuditDraft) => void
}

export type AuditDraft = { action: string; subjectId?: Id | null; detail?: Record<string, unknown> }

/**
 * The frame of every write in a room: permission, a kept answer for a repeated request, the room's revision (row lock),
 * the work, its audit rows, the answer kept, listeners told at commit.
 */
export async function writeInRoom<T>(
  { ctx, roomId, permission }: { ctx: Context; roomId: Id; permission: RoomPermission },
  run: (work: Work) => Promise<T>,
): Promise<T> {
  return inTransaction(ctx.database, async (tx) => {
    await assertMay({ tx, actor: ctx.actor, roomId, permission })
    const replay = await findAnswer<T>(tx, ctx)
    if (replay) return replay.answer
    return workInRoom({ tx, ctx, roomId, permission }, run)
  })
}

/** The inner part of a write, for use cases that hold a transaction already. */
export async function workInRoom<T>(
  { tx, ctx, roomId, permission }: { tx: Transaction; ctx: Context; roomId: Id; permission: RoomPermission },
  run: (work: Work) => Promise<T>,
): Promise<T> {
  const revision = await advanceRevision(tx, roomId)
  if (revision === null) throw notFound('room')
  // Asked under the lock: a role taken away while this request waited counts.
  const role = await assertMay({ tx, actor: ctx.actor, roomId, permission })
  const entries: AuditDraft[] = []
  const result = await run({ tx, ctx, roomId, role, revision, audit: (entry) => entries.push(entry) })
  if (entries.length === 0) throw new Error('A write in a room left no audit entry; nothing was written.')
  await tx.auditEntry.createMany({
    data: entries.map((entry, index) => auditRow({ ctx, roomId, revision }, entry, index + 1)),
  })
  await keepAnswer(tx, ctx, result)
  await notifyRoom(tx, { roomId, revision })
  return result
}

function auditRow(at: { ctx: Context; roomId: Id; revision: number }, entry: AuditDraft, ordinal: number) {
  const { ctx, roomId, revision } = at
  return {
    roomId,
    revision,
    ordinal,
    at: ctx.now,
    userId: actorUserId(ctx.actor),
    actorName: ctx.actor.kind === 'system' ? ctx.actor.job : actorName(ctx.actor),
    action: entry.action,
    subjectId: entry.subjectId ?? null,
    detail: (entry.detail ?? {}) as Prisma.InputJsonObject,
  }
}

/** The frame of every read in a room: one snapshot of the database, permission first. */
export async function readInRoom<T>(
  { ctx, roomId, permission = 'read' }: { ctx: Context; roomId: Id; permission?: RoomPermission },
  run: (read: { tx: Transaction; ctx: Context; roomId: Id; role: Role }) => Promise<T>,
): Promise<T> {
  return inSnapshot(ctx.database, async (tx) => {
    const role = await assertMay({ tx, actor: ctx.actor, roomId, permission })
    return run({ tx, ctx, roomId, role })
  })
}
