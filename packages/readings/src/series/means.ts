import type pg from 'pg'

export type HourMean = { hour: number; mean: number; number: number }

/** The hours of gauges that are over, each from its own beginning on, oldest first; times are milliseconds since 1970. */
export async function readHourMeans(
  pool: pg.Pool,
  gauges: readonly { channel: number; from: number }[],
  until: number,
): Promise<Map<number, HourMean[]>> {
  const { rows } = await pool.query<{ channel: number; hour: Date; mean: number; number: number }>(
    `SELECT channel, hour, sum / number AS mean, number FROM unnest($1::int[], $2::timestamptz[]) AS asked (channel, since)
     JOIN telemetry.hour AS hour USING (channel)
     WHERE hour.hour >= asked.since AND hour.hour <= $3::timestamptz - interval '1 hour' ORDER BY channel, hour`,
    [gauges.map(({ channel }) => channel), gauges.map(({ from }) => new Date(from)), new Date(until)],
  )
  const means = new Map<number, HourMean[]>()
  for (const { channel, hour, mean, number } of rows)
    means.set(channel, [...(means.get(channel) ?? []), { hour: hour.getTime(), mean, number }])
  return means
}
