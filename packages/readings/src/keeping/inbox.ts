import { setImmediate } from 'node:timers/promises'
import type pg from 'pg'
import { insertReadings } from './insert.ts'
import type { KeptReading } from './kept-reading.ts'

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

/** Whatever arrives while a commit is under way goes with the next one. */
export function createInbox(pool: pg.Pool | pg.PoolClient): Inbox {
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
      // What stands on other connections already is read first: a commit for the one that came first would keep them waiting.
      await setImmediate()
      const some = takeSome()
      try {
        await insertReadings(
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
