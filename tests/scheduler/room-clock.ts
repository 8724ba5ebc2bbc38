import type { TickLog } from '@fryward/scheduler'
import { tick } from '@fryward/scheduler'
import type { BodyInputOf, Day, Room } from '@fryward/shared'
import { openRoom, type Person, type World } from '../support/world.ts'

/** A log that keeps what it was told; most tests expect it to stay empty. */
export type KeptLog = TickLog & { warnings: { detail: object; message: string }[] }

export function keptLog(): KeptLog {
  const warnings: KeptLog['warnings'] = []
  return { warnings, warn: (detail, message) => warnings.push({ detail, message }), info: () => undefined }
}

/** One tick at the world's time; a room that fails fails the test. */
export async function tickNow(world: World): Promise<string[]> {
  const log = keptLog()
  const written = await tick({ database: world.database, now: world.clock.now, log })
  if (log.warnings.length > 0) throw new Error(`The tick warned: ${log.warnings[0]!.message}`, { cause: log.warnings })
  return written
}

export type RoomUnderClock = { room: Room; roomId: string; owner: Person; day: (date: string) => Promise<Day> }

export async function openClockRoom(world: World, setup: Partial<BodyInputOf<'createRoom'>>): Promise<RoomUnderClock> {
  const { owner, room } = await openRoom(world, setup)
  return {
    ...{ owner, room, roomId: room.id },
    day: (date) => world.ok(owner, 'getDay', { params: { roomId: room.id, date } }),
  }
}

/** Everything the scheduler may touch of a room, for "nothing changed". */
export async function stateOf(world: World, roomId: string): Promise<unknown> {
  const { pool } = world.database
  const read = async (statement: string) => (await pool.query(statement, [roomId])).rows
  return {
    revision: await read('SELECT revision FROM room WHERE id = $1'),
    tasks: await read(
      'SELECT id, key, state, on_date, due_at, late_at, closes_at, content, reason, version FROM task WHERE room_id = $1 ORDER BY key',
    ),
    changes: await read('SELECT task_id, revision FROM task_change WHERE room_id = $1 ORDER BY 1, 2'),
    lists: await read(
      'SELECT on_date::text, opened_at, planned_at, revision FROM day_list WHERE room_id = $1 ORDER BY 1',
    ),
    audit: await read('SELECT revision, ordinal, action FROM audit_entry WHERE room_id = $1 ORDER BY 1, 2'),
  }
}

/** Dates of the room's lists that are open. */
export async function openedDates(world: World, roomId: string): Promise<string[]> {
  const { rows } = await world.database.pool.query<{ date: string }>(
    'SELECT on_date::text AS date FROM day_list WHERE room_id = $1 ORDER BY 1',
    [roomId],
  )
  return rows.map((row) => row.date)
}
