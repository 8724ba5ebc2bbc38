import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { openClockRoom, openedDates, type RoomUnderClock, stateOf } from '../scheduler/room-clock.ts'
import { root } from '../support/project-root.ts'
import { zoneAtHour } from '../support/stage-zone.mjs'
import { openWorld, type World } from '../support/world.ts'

// The process goes by the machine's own clock: the rooms were last looked at three days ago.
const now = Date.now()
const threeDaysAgo = new Date(now - 3 * 86_400_000).toISOString()
const patience = { timeout: 60_000, interval: 20 }

let world: World
let killedIn: RoomUnderClock
let untouched: RoomUnderClock
let bystander: pg.Client
const running = new Set<ChildProcess>()

beforeAll(async () => {
  await ensurePrograms(() => undefined)
  world = await openWorld({ at: threeDaysAgo })
  // No midnight is near there, and no change of clocks makes a day of the three longer or shorter.
  const timeZone = zoneAtHour(9)
  killedIn = await openClockRoom(world, { name: 'First in order', timeZone })
  untouched = await openClockRoom(world, { name: 'Second in order', timeZone })
  bystander = new pg.Client({ connectionString: world.database.connectionString })
  await bystander.connect()
})
afterAll(async () => {
  for (const child of running) child.kill('SIGKILL')
  await bystander.end()
  await world.close()
})

function startScheduler(): ChildProcess {
  const child = fork(join(root, 'apps/scheduler/packed/main.js'), [], {
    execArgv: [],
    env: { PATH: process.env.PATH, DATABASE_URL: world.database.connectionString, LOG_LEVEL: 'silent' },
  })
  running.add(child)
  child.once('exit', () => running.delete(child))
  return child
}

/** The backends that wait for the audit table, which the bystander holds. Databases of other tests have one of the same id. */
async function waitingBackends(): Promise<number[]> {
  const { rows } = await bystander.query<{ pid: number }>(
    `SELECT pid FROM pg_locks WHERE relation = 'audit_entry'::regclass AND NOT granted
       AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
  )
  return rows.map(({ pid }) => pid)
}

/** Which of the tables that a day stands in this backend has written in its open transaction. */
async function tablesWrittenBy(backend: number): Promise<string[]> {
  const { rows } = await bystander.query<{ name: string }>(
    `SELECT DISTINCT relation::regclass::text AS name FROM pg_locks
     WHERE pid = $1 AND granted AND mode = 'RowExclusiveLock'
       AND relation IN ('room'::regclass, 'task'::regclass, 'day_list'::regclass) ORDER BY 1`,
    [backend],
  )
  return rows.map(({ name }) => name)
}

async function isThere(backend: number): Promise<boolean> {
  const { rows } = await bystander.query('SELECT FROM pg_stat_activity WHERE pid = $1', [backend])
  return rows.length > 0
}

/** What the tasks of a room ask for, without the ids that differ from room to room. */
async function taskLines(roomId: string): Promise<string[]> {
  const { rows } = await world.database.pool.query<{ line: string }>(
    `SELECT concat_ws(' ', on_date, round_id, rule_id, subject.name, ordinal, state, content->'title') AS line
     FROM task JOIN subject USING (room_id) WHERE room_id = $1 AND subject.id = subject_id ORDER BY 1`,
    [roomId],
  )
  // The room itself is named after itself.
  return rows.map(({ line }) => line.replace('First in order', 'the room').replace('Second in order', 'the room'))
}

test('a scheduler process killed while it opens a day leaves nothing, and the next one opens it once and whole', async () => {
  const { roomId } = killedIn
  const before = await stateOf(world, roomId)
  await bystander.query('BEGIN')
  await bystander.query('LOCK TABLE audit_entry IN SHARE ROW EXCLUSIVE MODE')
  const first = startScheduler()
  const killed = once(first, 'exit')
  let backend = 0
  try {
    // By now its tasks and lists are written and only the audit row is left before the commit.
    await vi.waitFor(async () => {
      const waiting = await waitingBackends()
      expect(waiting).toHaveLength(1)
      backend = waiting[0]!
    }, patience)
    expect(await tablesWrittenBy(backend)).toEqual(['day_list', 'room', 'task'])
    first.kill('SIGKILL')
    expect(await killed).toEqual([null, 'SIGKILL'])
    expect(await isThere(backend)).toBe(true)
    expect(await stateOf(world, roomId)).toEqual(before)
  } finally {
    await bystander.query('ROLLBACK')
  }
  await vi.waitFor(async () => expect(await isThere(backend)).toBe(false), patience)
  expect(await stateOf(world, roomId)).toEqual(before)

  const second = startScheduler()
  expect((await once(second, 'message'))[0]).toEqual({ ready: true })
  const stopped = once(second, 'exit')
  second.kill('SIGTERM')
  expect(await stopped).toEqual([0, null])

  const { rows } = await world.database.pool.query(
    "SELECT room_id, count(*)::int AS times FROM audit_entry WHERE action = 'day.open' GROUP BY room_id ORDER BY room_id",
  )
  expect(rows).toEqual([roomId, untouched.roomId].sort().map((id) => ({ room_id: id, times: 1 })))
  expect((await openedDates(world, roomId)).length).toBe(4)
  expect(await openedDates(world, roomId)).toEqual(await openedDates(world, untouched.roomId))
  const lines = await taskLines(roomId)
  expect(lines.length).toBeGreaterThan(10)
  expect(lines).toEqual(await taskLines(untouched.roomId))
})
