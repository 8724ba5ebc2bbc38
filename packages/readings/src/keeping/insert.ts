import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import pg from 'pg'
import { from as copyFrom } from 'pg-copy-streams'

/** A reading of a known gauge, in the unit that is kept. `at`: milliseconds since 1970. */
export type KeptReading = { channel: number; at: number; value: number }

const hourMs = 3_600_000

// The hours that have to be added up anew. A mark that is there already is locked until the commit all the same: whoever
// adds up takes it off after that, and sees these readings.
const marking = `
  INSERT INTO telemetry.stale_hour (channel, hour)
  SELECT channel, to_timestamp(hour) FROM unnest($1::int[], $2::float8[]) AS touched (channel, hour)
  ON CONFLICT (channel, hour) DO UPDATE SET hour = excluded.hour WHERE false`
// One statement is one transaction.
const insertion = `
  WITH kept AS (
    INSERT INTO telemetry.reading (channel, at, value)
    SELECT channel, to_timestamp(at / 1000.0), value
    FROM unnest($3::int[], $4::float8[], $5::float8[]) AS posted (channel, at, value)
    ON CONFLICT DO NOTHING
  )${marking}`

// From about so many rows on COPY takes two thirds of the time that an INSERT does; below, its round trips take more.
// Measured beside each other on one machine.
const worthCopying = 2000

/** Keeps readings; one of the same gauge and time as an earlier one changes nothing. */
export async function insertReadings(pool: pg.Pool | pg.PoolClient, readings: readonly KeptReading[]): Promise<void> {
  // In one order for everybody: two processes that write the same rows wait for each other and never in a circle.
  const sorted = readings.toSorted((one, other) => one.channel - other.channel || one.at - other.at)
  const marks = marksOf(sorted)
  if (sorted.length >= worthCopying && pool instanceof pg.Pool && (await copied(pool, sorted, marks))) return
  await pool.query({
    name: 'keep-readings',
    text: insertion,
    values: [
      ...marks,
      listOf(sorted.map(({ channel }) => channel)),
      listOf(sorted.map(({ at }) => at)),
      listOf(sorted.map(({ value }) => value)),
    ],
  })
}

// What the driver makes of a list of numbers puts each of them in quotes.
const listOf = (numbers: readonly number[]): string => `{${numbers.join(',')}}`

/** Gauges and hours that sorted readings touch, each once, as two lists. */
function marksOf(sorted: readonly KeptReading[]): [channels: string, hours: string] {
  const touched: { channel: number; hour: number }[] = []
  for (const { channel, at } of sorted) {
    const hour = Math.floor(at / hourMs) * 3600
    const last = touched.at(-1)
    if (last?.channel !== channel || last.hour !== hour) touched.push({ channel, hour })
  }
  return [listOf(touched.map(({ channel }) => channel)), listOf(touched.map(({ hour }) => hour))]
}

const uniqueViolation = '23505'

/** @returns false where one of them is there already, or twice among them: COPY takes all or none, and nothing is kept. */
async function copied(pool: pg.Pool, sorted: readonly KeptReading[], marks: [string, string]): Promise<boolean> {
  const client = await pool.connect()
  let failure: Error | undefined
  try {
    await client.query('BEGIN')
    await client.query({ name: 'mark-hours', text: marking, values: marks })
    await pipeline(
      Readable.from(linesOf(sorted)),
      client.query(copyFrom('COPY telemetry.reading (channel, at, value) FROM STDIN')),
    )
    await client.query('COMMIT')
    return true
  } catch (error) {
    const isTaken = error instanceof pg.DatabaseError && error.code === uniqueViolation
    failure = isTaken ? undefined : error instanceof Error ? error : new Error(String(error))
    if (!isTaken) throw error
    await client.query('ROLLBACK')
    return false
  } finally {
    // A connection that failed otherwise is not used again.
    client.release(failure)
  }
}

const linesAtOnce = 2000

function* linesOf(sorted: readonly KeptReading[]): Generator<string> {
  for (let from = 0; from < sorted.length; from += linesAtOnce)
    yield sorted
      .slice(from, from + linesAtOnce)
      .map(({ channel, at, value }) => `${channel}\t${new Date(at).toISOString()}\t${value}\n`)
      .join('')
}
