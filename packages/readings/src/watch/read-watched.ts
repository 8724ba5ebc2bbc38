import type pg from 'pg'
import type { Watched } from './judge.ts'

export type WatchedGauge = { channel: number; low: number | null; high: number | null; setUpAt: number }

// As far back as one looks for when a trouble began.
const lookBackMs = 31 * 86_400_000

/** What `judge` needs of each gauge, in one statement for all of them. */
export async function readWatched(pool: pg.Pool, gauges: WatchedGauge[], now: number): Promise<Map<number, Watched>> {
  const { rows } = await pool.query<{ channel: number; at: Date | null; value: number | null; since: Date | null }>(
    // A side of the limits: -1 below, 1 above, 0 inside.
    `SELECT asked.channel, newest.at, newest.value, began.at AS since
     FROM unnest($1::int[], $2::float8[], $3::float8[]) AS asked (channel, low, high)
     LEFT JOIN LATERAL (
       SELECT at, value, CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END AS side
       FROM telemetry.reading WHERE channel = asked.channel AND at > $4 AND at <= $5 ORDER BY at DESC LIMIT 1
     ) AS newest ON true
     LEFT JOIN LATERAL (
       SELECT at FROM telemetry.reading
       WHERE channel = asked.channel AND at > $4 AND at <= $5
         AND CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END <> newest.side
       ORDER BY at DESC LIMIT 1
     ) AS other ON true
     LEFT JOIN LATERAL (
       SELECT at FROM telemetry.reading
       WHERE channel = asked.channel AND at > coalesce(other.at, $4) AND at <= $5 ORDER BY at LIMIT 1
     ) AS began ON true`,
    [
      gauges.map(({ channel }) => channel),
      gauges.map(({ low }) => low),
      gauges.map(({ high }) => high),
      new Date(now - lookBackMs),
      new Date(now),
    ],
  )
  const setUpAt = new Map(gauges.map((gauge) => [gauge.channel, gauge.setUpAt]))
  return new Map(
    rows.map((row) => [
      row.channel,
      {
        latest: row.at === null || row.value === null ? null : { at: row.at.getTime(), value: row.value },
        since: row.since?.getTime() ?? null,
        setUpAt: setUpAt.get(row.channel) ?? now,
      },
    ]),
  )
}
