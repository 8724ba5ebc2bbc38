import { addDays, husbandryDay, localDate } from '@fryward/husbandry'
import { type Day, type Id, type PlainDate, RoundsSchema } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../work/write-in-room.ts'
import { taskIncludes, toTasks } from './task-view.ts'

/** A day's list as it is kept. A day that nobody has opened yet is an empty list that says so. */
export async function getDay({
  ctx,
  roomId,
  date,
}: {
  ctx: Context
  roomId: Id
  date: PlainDate | 'today' | 'tomorrow'
}): Promise<Day> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const room = await tx.room.findUnique({ where: { id: roomId } })
    if (!room) throw notFound('room')
    const today = localDate({ timeZone: room.timeZone, at: ctx.now })
    const asked = date === 'today' ? today : date === 'tomorrow' ? addDays(today, 1) : date
    const list = await tx.dayList.findUnique({ where: { roomId_onDate: { roomId, onDate: toDateColumn(asked) } } })
    const rows = await tx.task.findMany({
      where: { roomId, onDate: toDateColumn(asked) },
      include: taskIncludes,
      orderBy: [{ dueAt: 'asc' }, { id: 'asc' }],
    })
    const day = husbandryDay({ room: { ...room, rounds: RoundsSchema.parse(room.rounds) }, date: asked })
    return {
      date: asked,
      today,
      now: ctx.now,
      rounds: day.rounds,
      tasks: await toTasks(tx, roomId, rows),
      gaps: (list?.gaps ?? []) as Day['gaps'],
      isOpened: list !== null,
      revision: room.revision,
    }
  })
}
