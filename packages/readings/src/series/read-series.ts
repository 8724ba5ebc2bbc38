import type pg from 'pg'
import { rollUp } from '../keeping/roll-up.ts'

/** One step of a chart; what lay between its ends is in `low` and `high`. */
export type SeriesPoint = { at: string; low: number; high: number; mean: number; number: number }
export type Series = { stepS: number; points: SeriesPoint[] }

type Asked = { channel: number; from: string; to: string; points: number }

// As far as that single readings are gone through; beyond, hours answer as quickly for years as for weeks.
const rawUpToMs = 36 * 3_600_000

/**
 * A gauge over a span, in about as many steps as a chart has room for, each with its extremes. Steps without a reading are
 * left out: a gap is a gap.
 */
export async function readSeries(pool: pg.Pool, { channel, from, to, points }: Asked): Promise<Series> {
  const spanMs = Date.parse(to) - Date.parse(from)
  const fits = Math.max(1, Math.ceil(spanMs / 1000 / points))
  if (spanMs <= rawUpToMs) return { stepS: fits, points: await read(pool, raw, { channel, from, to, stepS: fits }) }
  await rollUp(pool, [channel])
  const stepS = Math.ceil(fits / 3600) * 3600
  return { stepS, points: await read(pool, hourly, { channel, from, to, stepS }) }
}

const raw = `
  SELECT date_bin(make_interval(secs => $4), at, $2) AS at,
         min(value) AS low, max(value) AS high, avg(value) AS mean, count(*)::int AS number
  FROM telemetry.reading WHERE channel = $1 AND at >= $2 AND at < $3 GROUP BY 1 ORDER BY 1`
const hourly = `
  SELECT date_bin(make_interval(secs => $4), hour, date_trunc('hour', $2::timestamptz, 'UTC')) AS at,
         min(low) AS low, max(high) AS high, sum(sum) / sum(number) AS mean, sum(number)::int AS number
  FROM telemetry.hour WHERE channel = $1 AND hour >= date_trunc('hour', $2::timestamptz, 'UTC') AND hour < $3
  GROUP BY 1 ORDER BY 1`

async function read(
  pool: pg.Pool,
  text: string,
  { channel, from, to, stepS }: { channel: number; from: string; to: string; stepS: number },
): Promise<SeriesPoint[]> {
  const { rows } = await pool.query<Omit<SeriesPoint, 'at'> & { at: Date }>(text, [channel, from, to, stepS])
  return rows.map((row) => ({ ...row, at: row.at.toISOString() }))
}
