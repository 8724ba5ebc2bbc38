import type { World } from '../support/world.ts'

/** Tables that say of which room a row is: every world has the same. */
let roomTables: string[] | undefined
async function findRoomTables({ database }: World): Promise<string[]> {
  const found = await database.pool.query<{ name: string }>(
    `SELECT table_name AS name FROM information_schema.columns
     WHERE table_schema = 'public' AND column_name = 'room_id' ORDER BY 1`,
  )
  return found.rows.map(({ name }) => name)
}

/** How many rows each table holds of a room, its revision, and how many accounts and kept answers there are. */
export async function fingerprintOf(world: World, roomId: string): Promise<Record<string, number>> {
  roomTables ??= await findRoomTables(world)
  const counts = [
    ...roomTables.map((name) => `SELECT '${name}' AS name, count(*)::int AS rows FROM "${name}" WHERE room_id = $1`),
    `SELECT 'revision', revision FROM room WHERE id = $1`,
    // Versions and states move without a row more or less.
    `SELECT 'versions', coalesce(sum(version), 0)::int FROM subject WHERE room_id = $1`,
    `SELECT 'task versions', coalesce(sum(version), 0)::int FROM task WHERE room_id = $1`,
    `SELECT 'struck', count(struck_at)::int FROM fact WHERE room_id = $1`,
    ...['user', 'account', 'room', 'idempotency_key'].map(
      (name) => `SELECT 'all ${name}', count(*)::int FROM "${name}"`,
    ),
  ]
  const found = await world.database.pool.query<{ name: string; rows: number }>(counts.join(' UNION ALL '), [roomId])
  return Object.fromEntries(found.rows.map(({ name, rows }) => [name, rows]))
}
