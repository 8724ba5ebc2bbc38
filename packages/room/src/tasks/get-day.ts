import { addDays, husbandryDay, localDate } from '@fryward/husbandry'
import { type Day, type Id, type PlainDate, RoundsSchema } from '@fryward/shared'
import { findRoomMark, type Transaction, toDateColumn } from '@fryward/store'
import { LRUCache } from 'lru-cache'
import type { Context } from '../context.ts'
import { dutyOf } from '../duty/duty-of.ts'
import { noSuchRoom } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { taskIncludes, toTasks } from './task-view.ts'
import { inWalkingOrder } from './walking-order.ts'

// Every write in a room moves its revision on, so a list read at a revision is the list until the next one. A phone
// that asks again costs one indexed query; two hundred rooms with their today and tomorrow fit.
const kept = new LRUCache<string, Day>({ max: 400 })

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
  // Whoever is in the room may read; for anybody else there is no such room.
  const mark = await findRoomMark(ctx.database, { roomId, userId: personOf(ctx.actor) })
  if (!mark) throw noSuchRoom()
  const today = localDate({ timeZone: mark.timeZone, at: ctx.now })
  const asked = date === 'today' ? today : date === 'tomorrow' ? addDays(today, 1) : date
  const key = `${roomId}/${asked}/${today}`
  const known = kept.get(key)
  if (known?.revision === mark.revision) return known
  const read = await readDay({ ctx, roomId, date: asked, today })
  kept.set(key, read)
  return read
}

type DayAsked = { roomId: Id; date: PlainDate; today: PlainDate }

const readDay = ({ ctx, ...asked }: DayAsked & { ctx: Context }): Promise<Day> =>
  readInRoom({ ctx, roomId: asked.roomId }, ({ tx }) => dayOf(tx, asked))

async function dayOf(tx: Transaction, { roomId, date, today }: DayAsked): Promise<Day> {
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const list = await tx.dayList.findUnique({ where: { roomId_onDate: { roomId, onDate: toDateColumn(date) } } })
  const rows = await tx.task.findMany({
    where: { roomId, onDate: toDateColumn(date) },
    include: taskIncludes,
  })
  const day = husbandryDay({ room: { ...room, rounds: RoundsSchema.parse(room.rounds) }, date })
  return {
    date,
    today,
    rounds: day.rounds,
    tasks: await toTasks(tx, roomId, rows.sort(inWalkingOrder)),
    gaps: (list?.gaps ?? []) as Day['gaps'],
    isOpened: list !== null,
    lightsOffAt: day.lightsOffAt,
    onDuty: await dutyOf(tx, { roomId, date }),
    revision: room.revision,
  }
}
