import type pg from 'pg'

/** A reading of a known gauge, in the unit that is kept. `at`: milliseconds since 1970. */
export type KeptReading = { channel: number; at: number; value: number }

export type Inbox = {
  /** Resolves once the readings are committed; one of the same gauge and time as an earlier one changes nothing. */
  keep: (readings: KeptReading[]) => Promise<void>
}

/** Everything waits in memory; more than this is told to come again. */
const mostWaiting = 200_000
// Rows of one statement: the rest goes with the next.
const mostAtOnce = 50_000

export class InboxFull extends Error {
  override name = 'InboxFull'
}

type Waiting = { readings: KeptReading[]; resolve: () => void; reject: (error: unknown) => void }

/** Whatever arrives while a commit is under way goes with the next one: no reading waits for company. */
export function createInbox(pool: Pick<pg.Pool, 'query'>): Inbox {
  let line: Waiting[] = []
  let number = 0
  let isWriting = false

  const takeSome = (): Waiting[] => {
    let rows = 0
    const some: Waiting[] = []
    for (const each of line) {
      if (some.length > 0 && rows + each.readings.length > mostAtOnce) break
      rows += each.readings.length
      some.push(each)
    }
    line = line.slice(some.length)
    number -= rows
    return some
  }
  const writeAll = async () => {
    isWriting = true
    while (line.length > 0) {
      const some = takeSome()
      try {
        await insert(
          pool,
          some.flatMap((each) => each.readings),
        )
        for (const each of some) each.resolve()
      } catch (error) {
        for (const each of some) each.reject(error)
      }
    }
    isWriting = false
  }
  return {
    keep: (readings) => {
      if (readings.length === 0) return Promise.resolve()
      if (number + readings.length > mostWaiting) return Promise.reject(new InboxFull('more readings wait than fit'))
      return new Promise((resolve, reject) => {
        line.push({ readings, resolve, reject })
        number += readings.length
        if (!isWriting) void writeAll()
      })
    },
  }
}

const hourMs = 3_600_000

// One statement is one transaction: readings, and which hours have to be added up anew.
const insertion = `
  WITH kept AS (
    INSERT INTO telemetry.reading (channel, at, value)
    SELECT channel, to_timestamp(at / 1000.0), value
    FROM unnest($1::int[], $2::float8[], $3::float8[]) AS posted (channel, at, value)
    ON CONFLICT DO NOTHING
  )
  INSERT INTO telemetry.stale_hour (channel, hour)
  SELECT channel, to_timestamp(hour) FROM unnest($4::int[], $5::float8[]) AS touched (channel, hour)
  ON CONFLICT DO NOTHING`

async function insert(pool: Pick<pg.Pool, 'query'>, readings: KeptReading[]): Promise<void> {
  // In one order for everybody: two processes that write the same rows wait for each other and never in a circle.
  const sorted = readings.toSorted((one, other) => one.channel - other.channel || one.at - other.at)
  const hours = [...new Set(sorted.map(({ channel, at }) => `${channel} ${Math.floor(at / hourMs) * 3600}`))].map(
    (pair) => pair.split(' ').map(Number),
  )
  await pool.query({
    name: 'keep-readings',
    text: insertion,
    values: [
      sorted.map(({ channel }) => channel),
      sorted.map(({ at }) => at),
      sorted.map(({ value }) => value),
      hours.map(([channel]) => channel),
      hours.map(([, hour]) => hour),
    ],
  })
}
