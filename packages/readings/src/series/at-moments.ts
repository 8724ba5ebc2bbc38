import type pg from 'pg'

/** Which of these moments (milliseconds since 1970) a gauge has a reading of. */
export async function readMoments(
  pool: Pick<pg.Pool, 'query'>,
  { channel, at }: { channel: number; at: readonly number[] },
): Promise<Set<number>> {
  const { rows } = await pool.query<{ at: Date }>(
    `SELECT at FROM telemetry.reading
     WHERE channel = $1 AND at = ANY (SELECT to_timestamp(given / 1000.0) FROM unnest($2::float8[]) AS given)`,
    [channel, at],
  )
  return new Set(rows.map((row) => row.at.getTime()))
}
