import { type Id, type Task, undoMinutes } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { endLinksOf } from '../feed-links/end-links-of.ts'
import { personOf } from '../frame/person-of.ts'
import { changeSubject, endSubject } from '../frame/subject-row.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { takeBackBatches } from '../hatches/take-back-batches.ts'
import { getTaskInRoom } from './get-task.ts'
import { type TaskRow, taskIncludes } from './task-view.ts'

/** Takes back the last sign-off or the skip within a quarter of an hour; its records are struck out, not deleted. */
export async function undoTask({ ctx, roomId, taskId }: { ctx: Context; roomId: Id; taskId: Id }): Promise<Task> {
  return writeInRoom(
    { ctx, roomId, permission: 'sign_off' },
    async (work) => {
      const task = await work.tx.task.findUnique({
        where: { roomId_id: { roomId, id: taskId } },
        include: taskIncludes,
      })
      if (!task) throw notFound('task')
      if (task.state === 'done') await undoSignOff(work, task)
      else if (task.state === 'skipped') await undoSkip(work, task)
      else
        throw new RoomError('wrong_state', `This task is ${task.state}; there is nothing to take back.`, {
          current: await getTaskInRoom(work, taskId),
        })
      work.audit({
        action: 'task.undo',
        subjectId: task.subjectId,
        detail: { taskId, ruleId: task.ruleId, was: task.state },
        why: 'a sign-off was taken back',
      })
    },
    (work) => getTaskInRoom(work, taskId),
  )
}

async function undoSignOff(work: Work, task: TaskRow): Promise<void> {
  const { tx, roomId, ctx } = work
  const standing = task.signOffs.filter((signOff) => signOff.undoneAt === null)
  const last = standing.at(-1)
  if (!last) throw new Error(`Task ${task.id} is done without a standing sign-off.`)
  assertMayUndo(work, { userId: last.userId, at: last.receivedAt })
  await tx.signOff.update({ where: { roomId_id: { roomId, id: last.id } }, data: { undoneAt: ctx.now } })
  await tx.fact.updateMany({
    where: { roomId, signOffId: last.id, struckAt: null },
    data: {
      struckAt: ctx.now,
      struckBy: personOf(ctx.actor),
      struckReason: 'The sign-off was taken back.',
      struckRevision: work.revision,
    },
  })
  const hatches = await tx.fact.findMany({ where: { roomId, signOffId: last.id, kind: 'hatch' } })
  await takeBackBatches(work, hatches, 'The sign-off was taken back.')
  await takeBackCultures(work, last.id)
  const decisions = await tx.fact.findMany({ where: { roomId, signOffId: last.id, kind: 'decision' } })
  for (const { subjectId } of decisions) await changeSubject(work, { id: subjectId })
  if (standing.length > 1) return
  await reopen(work, task)
}

/** A culture that this sign-off started: it was put in at that very moment. */
async function takeBackCultures(work: Work, signOffId: Id): Promise<void> {
  const { tx, roomId } = work
  const started = await tx.fact.findMany({ where: { roomId, signOffId, kind: 'inoculation' } })
  for (const { subjectId: id, at } of started) {
    const culture = await tx.culture.findUnique({ where: { roomId_id: { roomId, id } } })
    if (culture?.startedAt.getTime() !== at.getTime()) continue
    await endLinksOf(work, { cultureId: id })
    await endSubject(work, { id, reason: 'The sign-off was taken back.', how: 'taken back' })
  }
}

async function undoSkip(work: Work, task: TaskRow): Promise<void> {
  assertMayUndo(work, { userId: task.closedBy, at: task.closedAt ?? task.createdAt })
  await reopen(work, task)
}

async function reopen(work: Work, task: TaskRow): Promise<void> {
  const isStillOpen = task.closesAt.toISOString() > work.ctx.now
  await work.tx.task.update({
    where: { roomId_id: { roomId: work.roomId, id: task.id } },
    data: {
      state: isStillOpen ? 'open' : 'missed',
      reason: isStillOpen ? null : 'Not done by the end of its time.',
      closedBy: null,
      closedAt: isStillOpen ? null : work.ctx.now,
      version: { increment: 1 },
    },
  })
}

function assertMayUndo(work: Work, done: { userId: string | null; at: Date }): void {
  const isOwn = done.userId === personOf(work.ctx.actor)
  if (!isOwn && work.role === 'stand_in')
    throw new RoomError('not_allowed', 'A stand-in takes back their own sign-offs; ask a caretaker about this one.')
  if (Date.parse(work.ctx.now) - done.at.getTime() > undoMinutes * 60_000)
    throw new RoomError(
      'too_late_to_undo',
      `This can be taken back for ${undoMinutes} minutes. Now strike the record out on the vessel's page, with a reason.`,
    )
}
