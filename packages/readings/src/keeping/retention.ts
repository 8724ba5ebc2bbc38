import type pg from 'pg'
import { rollUp } from './roll-up.ts'

/**
 * Drops the months of single readings that ended before so many months ago; their hours stay, for charts and records. What no
 * month took goes with them.
 * @returns names of the partitions that were dropped.
 */
export async function dropOldMonths(
  pool: pg.Pool,
  { now, keepMonths }: { now: string; keepMonths: number },
): Promise<string[]> {
  const at = new Date(now)
  const first = new Date(Date.UTC(at.getUTCFullYear(), at.getUTCMonth() - keepMonths, 1))
  const { rows } = await pool.query<{ name: string }>(
    `SELECT child.relname AS name FROM pg_inherits JOIN pg_class AS child ON child.oid = inhrelid
     WHERE inhparent = 'telemetry.reading'::regclass AND child.relname ~ '^reading_[0-9]{4}_[0-9]{2}$'
       AND child.relname < $1 ORDER BY 1`,
    [`reading_${first.toISOString().slice(0, 7).replace('-', '_')}`],
  )
  // What is dropped has been added up: after that nothing can.
  if (rows.length > 0) await rollUp(pool)
  const dropped: string[] = []
  for (const { name } of rows) {
    // Of digits alone, as the pattern holds. Another process may have dropped it meanwhile.
    await pool.query(`DROP TABLE IF EXISTS telemetry.${name}`)
    dropped.push(name)
  }
  await pool.query('DELETE FROM telemetry.reading_behind WHERE at < $1', [first])
  return dropped
}
