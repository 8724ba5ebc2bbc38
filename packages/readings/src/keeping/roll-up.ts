import type pg from 'pg'

// Hours added up in one transaction.
const mostAtOnce = 500

/**
 * Adds up the hours that got readings since they were last added up, late ones included. Any number may do so at once.
 * @param channels only of these gauges; of all without it.
 * @returns how many hours were added up.
 */
export async function rollUp(pool: pg.Pool, channels?: number[]): Promise<number> {
  let total = 0
  for (;;) {
    const number = await rollUpSome(pool, channels)
    total += number
    if (number < mostAtOnce) return total
  }
}

/**
 * First the marks are taken off, then the hours are read with a view of their own. A reading that is being written holds its
 * mark until it commits, and is waited for; one that comes later puts its mark back. Each hour is looked up by itself: joined,
 * they would be held against all that their gauges ever read.
 */
async function rollUpSome(pool: pg.Pool, channels: number[] | undefined): Promise<number> {
  const client = await pool.connect()
  try {
    await client.query('BEGIN')
    const { rows } = await client.query<{ channel: number; hour: Date }>(
      `DELETE FROM telemetry.stale_hour WHERE (channel, hour) IN (
         SELECT channel, hour FROM telemetry.stale_hour
         WHERE $1::int[] IS NULL OR channel = ANY ($1)
         ORDER BY channel, hour LIMIT $2 FOR UPDATE)
       RETURNING channel, hour`,
      [channels ?? null, mostAtOnce],
    )
    if (rows.length > 0)
      await client.query(
        `INSERT INTO telemetry.hour (channel, hour, number, sum, low, high)
         SELECT stale.channel, stale.hour, read.* FROM unnest($1::int[], $2::timestamptz[]) AS stale (channel, hour)
         CROSS JOIN LATERAL (
           SELECT count(*), sum(value), min(value), max(value) FROM telemetry.reading
           WHERE channel = stale.channel AND at >= stale.hour AND at < stale.hour + interval '1 hour'
           HAVING count(*) > 0) AS read
         ORDER BY stale.channel, stale.hour
         ON CONFLICT (channel, hour) DO UPDATE SET
           number = excluded.number, sum = excluded.sum, low = excluded.low, high = excluded.high`,
        [rows.map(({ channel }) => channel), rows.map(({ hour }) => hour)],
      )
    await client.query('COMMIT')
    return rows.length
  } catch (error) {
    await client.query('ROLLBACK')
    throw error
  } finally {
    client.release()
  }
}
