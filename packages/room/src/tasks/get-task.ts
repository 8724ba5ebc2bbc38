import type { Id, Task } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import type { Work } from '../frame/write-in-room.ts'
import { taskIncludes, toTasks } from './task-view.ts'

export async function getTaskInRoom(work: Pick<Work, 'tx' | 'roomId'>, taskId: Id): Promise<Task> {
  const row = await work.tx.task.findUnique({
    where: { roomId_id: { roomId: work.roomId, id: taskId } },
    include: taskIncludes,
  })
  if (!row) throw notFound('task')
  const [task] = await toTasks(work.tx, work.roomId, [row])
  return task!
}

export async function getTask({ ctx, roomId, taskId }: { ctx: Context; roomId: Id; taskId: Id }): Promise<Task> {
  return readInRoom({ ctx, roomId }, (read) => getTaskInRoom(read, taskId))
}
