import type pg from 'pg'
import type { Watched } from './judge.ts'

export type WatchedGauge = {
  channel: number
  low: number | null
  high: number | null
  forMinutes: number
  setUpAt: number
}

// A gauge that is silent for longer is silent, whatever it read before.
const lookBackMs = 31 * 86_400_000

/**
 * What `judge` needs of each gauge, in one statement for all of them. Of each no more is read than the minutes that count
 * and the one reading before them: a gauge that keeps to its band for a month costs what one does that is new.
 */
export async function readWatched(pool: pg.Pool, gauges: WatchedGauge[], now: number): Promise<Map<number, Watched>> {
  const { rows } = await pool.query<{ channel: number; at: Date | null; value: number | null; since: Date | null }>(
    // A side of the limits: -1 below, 1 above, 0 inside. `before` is the newest reading that is as old as counts.
    `SELECT asked.channel, newest.at, newest.value,
       CASE WHEN before.side = newest.side AND NOT EXISTS (
         SELECT FROM telemetry.reading AS other
         WHERE other.channel = asked.channel AND other.at > before.at AND other.at <= $6
           AND CASE WHEN other.value < asked.low THEN -1 WHEN other.value > asked.high THEN 1 ELSE 0 END <> newest.side
       ) THEN before.at END AS since
     FROM unnest($1::int[], $2::float8[], $3::float8[], $4::timestamptz[]) AS asked (channel, low, high, counts_from)
     LEFT JOIN LATERAL (
       SELECT at, value, CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END AS side
       FROM telemetry.reading WHERE channel = asked.channel AND at > $5 AND at <= $6 ORDER BY at DESC LIMIT 1
     ) AS newest ON true
     LEFT JOIN LATERAL (
       SELECT at, CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END AS side
       FROM telemetry.reading
       WHERE channel = asked.channel AND at > $5 AND at <= asked.counts_from ORDER BY at DESC LIMIT 1
     ) AS before ON true`,
    [
      gauges.map(({ channel }) => channel),
      gauges.map(({ low }) => low),
      gauges.map(({ high }) => high),
      gauges.map(({ forMinutes }) => new Date(now - forMinutes * 60_000)),
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
