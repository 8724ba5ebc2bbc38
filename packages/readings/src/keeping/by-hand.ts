/** Runs a statement in a transaction of the caller's; `$1` is the JSON. */
export type Runs = (statement: string, json: string) => Promise<unknown>

type Moment = { channel: number; at: number }

const times = `jsonb_to_recordset($1::jsonb) AS given (channel int, at float8, value float8)`
const hours = `SELECT DISTINCT channel, date_trunc('hour', to_timestamp(at / 1000.0), 'UTC') AS hour FROM ${times}`
const marks = `INSERT INTO telemetry.stale_hour (channel, hour) SELECT channel, hour FROM touched ORDER BY 1, 2
  ON CONFLICT (channel, hour) DO UPDATE SET hour = excluded.hour WHERE false`

/** Keeps readings that a person brings, with what else that person writes. `at`: milliseconds since 1970. */
export async function keepByHand(run: Runs, readings: readonly (Moment & { value: number })[]): Promise<void> {
  await run(
    `WITH touched AS (${hours}), kept AS (
       INSERT INTO telemetry.reading (channel, at, value)
       SELECT channel, to_timestamp(at / 1000.0), value FROM ${times} ON CONFLICT DO NOTHING)
     ${marks}`,
    JSON.stringify(readings),
  )
}

/** Takes such readings back; their hours are added up anew from what is left, and are gone where nothing is. */
export async function takeBack(run: Runs, moments: readonly Moment[]): Promise<void> {
  await run(
    `WITH touched AS (${hours}), gone AS (
       DELETE FROM telemetry.reading USING ${times}
       WHERE reading.channel = given.channel AND reading.at = to_timestamp(given.at / 1000.0)),
     emptied AS (
       DELETE FROM telemetry.hour USING touched WHERE hour.channel = touched.channel AND hour.hour = touched.hour)
     ${marks}`,
    JSON.stringify(moments),
  )
}
