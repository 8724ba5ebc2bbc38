import type { Database } from './database.ts'

export type RoomMark = { revision: number; timeZone: string }

/** How far a room has come, for somebody who is in it; null for anybody else. One indexed, prepared query. */
export async function findRoomMark(
  { pool }: Pick<Database, 'pool'>,
  { roomId, userId }: { roomId: string; userId: string },
): Promise<RoomMark | null> {
  const found = await pool.query<RoomMark>({
    name: 'room-mark',
    text: `SELECT room.revision, room.time_zone AS "timeZone" FROM membership JOIN room ON room.id = membership.room_id
           WHERE membership.room_id = $1 AND membership.user_id = $2`,
    values: [roomId, userId],
  })
  return found.rows[0] ?? null
}
