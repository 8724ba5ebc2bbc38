import type { World } from '../support/world.ts'

/** How many rows each table holds of a room, its revision, and how many accounts and kept answers there are. */
export async function fingerprintOf(world: World, roomId: string): Promise<Record<string, number>> {
  const { pool } = world.database
  const tables = await pool.query<{ name: string }>(
    `SELECT table_name AS name FROM information_schema.columns
     WHERE table_schema = 'public' AND column_name = 'room_id' ORDER BY 1`,
  )
  const counts = [
    ...tables.rows.map(
      ({ name }) => `SELECT '${name}' AS name, count(*)::int AS rows FROM "${name}" WHERE room_id = $1`,
    ),
    `SELECT 'revision', revision FROM room WHERE id = $1`,
    // Versions and states move without a row more or less.
    `SELECT 'versions', coalesce(sum(version), 0)::int FROM subject WHERE room_id = $1`,
    `SELECT 'task versions', coalesce(sum(version), 0)::int FROM task WHERE room_id = $1`,
    `SELECT 'struck', count(struck_at)::int FROM fact WHERE room_id = $1`,
    ...['user', 'account', 'room', 'idempotency_key'].map(
      (name) => `SELECT 'all ${name}', count(*)::int FROM "${name}"`,
    ),
  ]
  const found = await pool.query<{ name: string; rows: number }>(counts.join(' UNION ALL '), [roomId])
  return Object.fromEntries(found.rows.map(({ name, rows }) => [name, rows]))
}
