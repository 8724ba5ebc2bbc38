import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import pg from 'pg'
import { from as copyFrom } from 'pg-copy-streams'
import { copyOf, lists } from './binary.ts'
import type { KeptReading } from './kept-reading.ts'

const hourMs = 3_600_000

// The hours that have to be added up anew. A mark that is there already is locked until the commit all the same: whoever
// adds up takes it off after that, and sees these readings.
const marking = `
  INSERT INTO telemetry.stale_hour (channel, hour)
  SELECT channel, hour FROM unnest($1::int[], $2::timestamptz[]) AS touched (channel, hour)
  ON CONFLICT (channel, hour) DO UPDATE SET hour = excluded.hour WHERE false`
// One statement is one transaction.
const insertion = (ifThere: string) => `
  WITH kept AS (
    INSERT INTO telemetry.reading (channel, at, value)
    SELECT channel, at, value FROM unnest($3::int[], $4::timestamptz[], $5::float8[]) AS posted (channel, at, value)
    ${ifThere}
  )${marking}`
const passingOver = { name: 'keep-readings', text: insertion('ON CONFLICT DO NOTHING') }
const allNew = { name: 'keep-new-readings', text: insertion('') }

// Readings from which on a way costs PostgreSQL least processor time. To look for each before it is put there takes it two
// fifths more than to refuse all where one is there; COPY takes more round trips, and its first thousand rows one and a half
// times as long as those that follow. Measured beside each other on PostgreSQL 18.
const worthSupposingNew = 300
const worthCopying = 4000

/** Keeps readings; one of the same gauge and time as an earlier one changes nothing. */
export async function insertReadings(pool: pg.Pool | pg.PoolClient, readings: readonly KeptReading[]): Promise<void> {
  // In one order for everybody: two processes that write the same rows wait for each other and never in a circle.
  const sorted = readings.toSorted((one, other) => one.channel - other.channel || one.at - other.at)
  if (pool instanceof pg.Pool && sorted.length >= worthSupposingNew && (await keptAsNew(pool, sorted))) return
  await pool.query({ ...passingOver, values: valuesOf(sorted) })
}

/** @returns false where one of them is there already, or twice among them: such a way takes all or none, and nothing is kept. */
async function keptAsNew(pool: pg.Pool, sorted: readonly KeptReading[]): Promise<boolean> {
  try {
    if (sorted.length >= worthCopying) await copy(pool, sorted)
    else await pool.query({ ...allNew, values: valuesOf(sorted) })
    return true
  } catch (error) {
    if (isTaken(error)) return false
    throw error
  }
}

const valuesOf = (sorted: readonly KeptReading[]): Buffer[] => [
  ...marksOf(sorted),
  lists.int4(sorted.map(({ channel }) => channel)),
  lists.timestamptz(sorted.map(({ at }) => at)),
  lists.float8(sorted.map(({ value }) => value)),
]

type Marks = [channels: Buffer, hours: Buffer]

/** Gauges and hours that sorted readings touch, each once, as two lists. */
function marksOf(sorted: readonly KeptReading[]): Marks {
  const touched: { channel: number; hour: number }[] = []
  for (const { channel, at } of sorted) {
    const hour = Math.floor(at / hourMs) * hourMs
    const last = touched.at(-1)
    if (last?.channel !== channel || last.hour !== hour) touched.push({ channel, hour })
  }
  return [lists.int4(touched.map(({ channel }) => channel)), lists.timestamptz(touched.map(({ hour }) => hour))]
}

const uniqueViolation = '23505'
const isTaken = (error: unknown): boolean => error instanceof pg.DatabaseError && error.code === uniqueViolation

async function copy(pool: pg.Pool, sorted: readonly KeptReading[]): Promise<void> {
  const client = await pool.connect()
  let failure: Error | undefined
  try {
    await client.query('BEGIN')
    await client.query({ name: 'mark-hours', text: marking, values: marksOf(sorted) })
    await pipeline(
      Readable.from([copyOf(sorted)]),
      client.query(copyFrom('COPY telemetry.reading (channel, at, value) FROM STDIN (FORMAT binary)')),
    )
    await client.query('COMMIT')
  } catch (error) {
    // A connection that failed otherwise is not used again.
    if (isTaken(error)) await client.query('ROLLBACK')
    else failure = error instanceof Error ? error : new Error(String(error))
    throw error
  } finally {
    client.release(failure)
  }
}
