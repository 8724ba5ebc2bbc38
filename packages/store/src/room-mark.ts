import DataLoader from 'dataloader'
import type { Database } from './database.ts'

export type RoomMark = { revision: number; timeZone: string }
type Asked = { roomId: string; userId: string }
type Loader = DataLoader<Asked, RoomMark | null>

/**
 * How far a room has come, for somebody who is in it; null for anybody else. One indexed, prepared query, shared by all
 * that ask before it is sent: when something happens in a room, every device in it asks at once.
 */
export const findRoomMark = ({ pool }: Pick<Database, 'pool'>, asked: Asked): Promise<RoomMark | null> =>
  loaderOf(pool).load(asked)

const loaders = new WeakMap<Database['pool'], Loader>()

function loaderOf(pool: Database['pool']): Loader {
  const known = loaders.get(pool)
  if (known) return known
  const loader: Loader = new DataLoader((asked) => findMarks(pool, asked), {
    // Nothing is kept, and nothing is read before it was asked for.
    cache: false,
    batchScheduleFn: (send) => setImmediate(send),
  })
  loaders.set(pool, loader)
  return loader
}

async function findMarks(pool: Database['pool'], asked: readonly Asked[]): Promise<(RoomMark | null)[]> {
  const { rows } = await pool.query<RoomMark & { place: number }>({
    name: 'room-marks',
    text: `SELECT asked.place::int, room.revision, room.time_zone AS "timeZone"
           FROM unnest($1::uuid[], $2::text[]) WITH ORDINALITY AS asked (room_id, user_id, place)
           JOIN membership USING (room_id, user_id) JOIN room ON room.id = membership.room_id`,
    values: [asked.map(({ roomId }) => roomId), asked.map(({ userId }) => userId)],
  })
  const marks: (RoomMark | null)[] = asked.map(() => null)
  for (const { place, ...mark } of rows) marks[place - 1] = mark
  return marks
}
