import type { Id, Task } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getTaskInRoom } from './get-task.ts'
import { assertItsDay } from './its-day.ts'

/** Not done, and why. Nothing is recorded of the animals, so the list stays as it is. */
export async function skipTask({
  ctx,
  roomId,
  taskId,
  reason,
}: {
  ctx: Context
  roomId: Id
  taskId: Id
  reason: string
}): Promise<Task> {
  return writeInRoom({ ctx, roomId, permission: 'sign_off', changesDay: false }, async (work) => {
    const task = await work.tx.task.findUnique({ where: { roomId_id: { roomId, id: taskId } } })
    if (!task) throw notFound('task')
    const userId = personOf(ctx.actor)
    if (task.state !== 'open')
      throw new RoomError('wrong_state', `This task is ${task.state} already; only an open one is skipped.`, {
        current: await getTaskInRoom(work, taskId),
      })
    await assertItsDay(work, task)
    await work.tx.task.update({
      where: { roomId_id: { roomId, id: taskId } },
      data: { state: 'skipped', reason, closedBy: userId, closedAt: ctx.now, version: { increment: 1 } },
    })
    work.audit({ action: 'task.skip', subjectId: task.subjectId, detail: { taskId, ruleId: task.ruleId, reason } })
    return getTaskInRoom(work, taskId)
  })
}
