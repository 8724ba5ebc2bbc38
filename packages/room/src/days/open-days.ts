import { addDays, localDate } from '@fryward/husbandry'
import type { Id } from '@fryward/shared'
import { lockRoom, type Transaction, toDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { transact } from '../frame/transact.ts'
import { type Work, workInRoom } from '../frame/write-in-room.ts'

/**
 * Opens today's and tomorrow's lists of a room where they are not open yet, and closes tasks whose window has passed.
 * What is due comes from the tables, so a second scheduler, a kill at any moment and days off change nothing:
 * days on which nobody opened a list stay without one.
 * @returns whether anything was written.
 */
export async function openDays({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<boolean> {
  if (!(await isAnythingDue(ctx.database.prisma, { ctx, roomId }))) return false
  return transact(ctx, async (tx) => {
    await lockRoom(tx, roomId)
    // Asked again under the lock: another scheduler may have done it while this one waited.
    if (!(await isAnythingDue(tx, { ctx, roomId }))) return false
    await workInRoom({ tx, ctx, roomId, permission: 'manage' }, openDaysInRoom)
    return true
  })
}

async function openDaysInRoom(work: Work): Promise<void> {
  // Closed first: what was not done by its time must not be drawn up again as open.
  const missed = await work.tx.task.updateMany({
    where: { roomId: work.roomId, state: 'open', closesAt: { lte: work.ctx.now } },
    data: {
      state: 'missed',
      closedAt: work.ctx.now,
      reason: 'Not done by the end of its time.',
      version: { increment: 1 },
    },
  })
  work.audit({
    action: 'day.open',
    detail: (planned) => ({ missed: missed.count, ...planned }),
    why: 'a new day',
  })
}

async function isAnythingDue(tx: Transaction, { ctx, roomId }: { ctx: Context; roomId: Id }): Promise<boolean> {
  const room = await tx.room.findUnique({ where: { id: roomId }, select: { timeZone: true } })
  if (!room) return false
  const today = localDate({ timeZone: room.timeZone, at: ctx.now })
  const opened = await tx.dayList.count({
    where: { roomId, onDate: { in: [toDateColumn(today), toDateColumn(addDays(today, 1))] } },
  })
  if (opened < 2) return true
  return (
    (await tx.task.findFirst({
      where: { roomId, state: 'open', closesAt: { lte: ctx.now } },
      select: { id: true },
    })) !== null
  )
}

/** Rooms in the order of their ids, for the scheduler's tick. */
export async function listRoomIds(ctx: Context): Promise<Id[]> {
  const rooms = await ctx.database.prisma.room.findMany({ select: { id: true }, orderBy: { id: 'asc' } })
  return rooms.map((room) => room.id)
}

/** Answers kept for repeated requests are kept for 30 days. */
export async function forgetOldAnswers(ctx: Context): Promise<number> {
  const before = new Date(Date.parse(ctx.now) - 30 * 86_400_000)
  return (await ctx.database.prisma.idempotencyKey.deleteMany({ where: { createdAt: { lt: before } } })).count
}
