import type pg from 'pg'

export type Latest = { channel: number; at: string; value: number }

/** The newest reading of each gauge that has one since `since`. */
export async function readLatest(pool: pg.Pool, channels: number[], since: string): Promise<Map<number, Latest>> {
  const { rows } = await pool.query<{ channel: number; at: Date; value: number }>(
    `SELECT asked.channel, newest.at, newest.value FROM unnest($1::int[]) AS asked (channel)
     CROSS JOIN LATERAL (
       SELECT at, value FROM telemetry.reading
       WHERE channel = asked.channel AND at >= $2 ORDER BY at DESC LIMIT 1) AS newest`,
    [channels, since],
  )
  return new Map(rows.map((row) => [row.channel, { ...row, at: row.at.toISOString() }]))
}
