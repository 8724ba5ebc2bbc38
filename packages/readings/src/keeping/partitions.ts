import type pg from 'pg'

const monthsBehind = 1
const monthsAhead = 3
// Any number that nothing else locks.
const lockKey = 72_707_370

type Month = { name: string; from: string; to: string }

/** Makes the months around now, so that no reading has to go into the partition behind; those that did are moved. */
export async function makePartitions(pool: pg.Pool, now: string): Promise<string[]> {
  const made: string[] = []
  for (let offset = -monthsBehind; offset <= monthsAhead; offset += 1)
    if (await makePartition(pool, monthOf(now, offset))) made.push(monthOf(now, offset).name)
  return made
}

export function monthOf(now: string, offset: number): Month {
  const at = new Date(now)
  const first = new Date(Date.UTC(at.getUTCFullYear(), at.getUTCMonth() + offset, 1)).toISOString()
  const next = new Date(Date.UTC(at.getUTCFullYear(), at.getUTCMonth() + offset + 1, 1)).toISOString()
  return { name: `reading_${first.slice(0, 7).replace('-', '_')}`, from: first, to: next }
}

async function makePartition(pool: pg.Pool, { name, from, to }: Month): Promise<boolean> {
  const client = await pool.connect()
  try {
    await client.query('BEGIN')
    await client.query('SELECT pg_advisory_xact_lock($1)', [lockKey])
    const found = await client.query('SELECT to_regclass($1) AS it', [`telemetry.${name}`])
    const isNew = found.rows[0]?.it === null
    if (isNew) {
      // The name and both ends are made above, of digits alone.
      await client.query(`CREATE TABLE telemetry.${name} (LIKE telemetry.reading INCLUDING ALL)`)
      await client.query(
        `WITH moved AS (DELETE FROM telemetry.reading_behind WHERE at >= $1 AND at < $2 RETURNING channel, at, value)
         INSERT INTO telemetry.${name} SELECT channel, at, value FROM moved`,
        [from, to],
      )
      await client.query(
        `ALTER TABLE telemetry.reading ATTACH PARTITION telemetry.${name} FOR VALUES FROM ('${from}') TO ('${to}')`,
      )
    }
    await client.query('COMMIT')
    return isNew
  } catch (error) {
    await client.query('ROLLBACK')
    throw error
  } finally {
    client.release()
  }
}
