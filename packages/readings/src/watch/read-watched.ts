import type pg from 'pg'
import type { Watched } from './judge.ts'

export type WatchedGauge = {
  channel: number
  low: number | null
  high: number | null
  forMinutes: number
  maxPerHour: number | null
  stuckAfterHours: number | null
  implausibleAt: number | null
  heardFrom: number
}

// A gauge that is silent for longer is silent, whatever it read before.
const lookBackMs = 31 * 86_400_000
const hourMs = 3_600_000
// So few readings may agree by chance. common practice
const fewestOfStuck = 10

// A side of the limits: -1 below, 1 above, 0 inside. `before` is the newest reading that is as old as counts. What is stuck
// is told by the hours, which are few where readings are many.
const statement = `
  SELECT asked.channel, newest.at, newest.value,
    CASE WHEN before.side = newest.side AND NOT EXISTS (
      SELECT FROM telemetry.reading AS other
      WHERE other.channel = asked.channel AND other.at > before.at AND other.at <= $8
        AND CASE WHEN other.value < asked.low THEN -1 WHEN other.value > asked.high THEN 1 ELSE 0 END <> newest.side
    ) THEN before.at END AS since,
    least(lately.low, newest.value) AS lately_low, greatest(lately.high, newest.value) AS lately_high,
    hour.low AS hour_low, hour.high AS hour_high,
    coalesce(still.number >= ${fewestOfStuck} AND still.low = still.high AND still.low = newest.value
      AND still.hour <= asked.stuck_from + interval '1 hour', false) AS is_stuck
  FROM unnest($1::int[], $2::float8[], $3::float8[], $4::timestamptz[], $5::boolean[], $6::timestamptz[])
    AS asked (channel, low, high, counts_from, asks_rate, stuck_from)
  LEFT JOIN LATERAL (
    SELECT at, value, CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END AS side
    FROM telemetry.reading WHERE channel = asked.channel AND at > $7 AND at <= $8 ORDER BY at DESC LIMIT 1
  ) AS newest ON true
  LEFT JOIN LATERAL (
    SELECT at, CASE WHEN value < asked.low THEN -1 WHEN value > asked.high THEN 1 ELSE 0 END AS side
    FROM telemetry.reading
    WHERE channel = asked.channel AND at > $7 AND at <= asked.counts_from ORDER BY at DESC LIMIT 1
  ) AS before ON true
  LEFT JOIN LATERAL (
    SELECT min(value) AS low, max(value) AS high FROM telemetry.reading
    WHERE channel = asked.channel AND at > asked.counts_from AND at <= $8
  ) AS lately ON true
  LEFT JOIN LATERAL (
    SELECT min(value) AS low, max(value) AS high FROM telemetry.reading
    WHERE asked.asks_rate AND channel = asked.channel AND at > newest.at - interval '1 hour' AND at <= newest.at
  ) AS hour ON true
  LEFT JOIN LATERAL (
    SELECT min(hour) AS hour, min(low) AS low, max(high) AS high, sum(number) AS number FROM telemetry.hour
    WHERE channel = asked.channel AND hour >= asked.stuck_from AND hour <= $8
  ) AS still ON true`

type Row = {
  channel: number
  at: Date | null
  value: number | null
  since: Date | null
  lately_low: number | null
  lately_high: number | null
  hour_low: number | null
  hour_high: number | null
  is_stuck: boolean
}

/**
 * What `judge` needs of each gauge, in one statement for all of them. Of each no more is read than the minutes that count,
 * the one reading before them, and an hour where its speed is watched: a gauge that keeps to its band for a month costs what one
 * does that is new.
 */
export async function readWatched(pool: pg.Pool, gauges: WatchedGauge[], now: number): Promise<Map<number, Watched>> {
  const { rows } = await pool.query<Row>(statement, [
    gauges.map(({ channel }) => channel),
    gauges.map(({ low }) => low),
    gauges.map(({ high }) => high),
    gauges.map(({ forMinutes }) => new Date(now - forMinutes * 60_000)),
    gauges.map(({ maxPerHour }) => maxPerHour !== null),
    gauges.map(({ stuckAfterHours }) => (stuckAfterHours === null ? null : new Date(now - stuckAfterHours * hourMs))),
    new Date(now - lookBackMs),
    new Date(now),
  ])
  const asked = new Map(gauges.map((gauge) => [gauge.channel, gauge]))
  return new Map(rows.map((row) => [row.channel, toWatched(row, asked.get(row.channel), now)]))
}

function toWatched(row: Row, gauge: WatchedGauge | undefined, now: number): Watched {
  return {
    latest: row.at === null || row.value === null ? null : { at: row.at.getTime(), value: row.value },
    since: row.since?.getTime() ?? null,
    lately: extremes(row.lately_low, row.lately_high),
    hour: extremes(row.hour_low, row.hour_high),
    isStuck: row.is_stuck,
    implausibleAt: gauge?.implausibleAt ?? null,
    heardFrom: gauge?.heardFrom ?? now,
  }
}

const extremes = (low: number | null, high: number | null) => (low === null || high === null ? null : { low, high })
