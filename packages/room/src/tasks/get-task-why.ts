import type { Id, TaskContent, TaskWhy } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'

/** Where each number of a task was read. */
export async function getTaskWhy({ ctx, roomId, taskId }: { ctx: Context; roomId: Id; taskId: Id }): Promise<TaskWhy> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const row = await tx.task.findUnique({ where: { roomId_id: { roomId, id: taskId } }, select: { content: true } })
    if (!row) throw notFound('task')
    return { because: (row.content as TaskContent).because }
  })
}
