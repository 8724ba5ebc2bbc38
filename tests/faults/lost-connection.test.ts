import { tick } from '@fryward/scheduler'
import pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { type FullRoom, openFullRoom, tasksOf } from '../api/full-room.ts'
import { keptLog, stateOf, tickNow } from '../scheduler/room-clock.ts'
import { openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom
let roomId: string
let bystander: pg.Client

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
  bystander = new pg.Client({ connectionString: world.database.connectionString })
  await bystander.connect()
})
afterAll(async () => {
  await bystander.end()
  await world.close()
})
beforeEach(async () => {
  world.clock.advanceMinutes(1440)
})

/**
 * Cuts the connection of whatever `work` does just before its audit row: its tasks, facts and sign-offs are written by
 * then and nothing is committed, which is also what a process killed there leaves behind.
 */
async function cutBeforeCommit<T>(work: () => Promise<T>): Promise<T> {
  await bystander.query('BEGIN')
  await bystander.query('LOCK TABLE audit_entry IN SHARE ROW EXCLUSIVE MODE')
  const running = work()
  try {
    await vi.waitFor(
      async () => {
        const { rows } = await bystander.query<{ pid: number }>(
          // The databases of other tests have a table of the same id.
          `SELECT pid FROM pg_locks WHERE relation = 'audit_entry'::regclass AND NOT granted
             AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
        )
        expect(rows).toHaveLength(1)
        await bystander.query('SELECT pg_terminate_backend($1)', [rows[0]!.pid])
      },
      { timeout: 60_000, interval: 20 },
    )
  } finally {
    await bystander.query('ROLLBACK')
  }
  return running
}

test('a scheduler killed in the middle leaves nothing half done, and the next tick does it all', async () => {
  const before = await stateOf(world, roomId)
  const log = keptLog()
  const written = await cutBeforeCommit(() => tick({ database: world.database, now: world.clock.now, log }))
  expect(written).toEqual([])
  expect(log.warnings).toMatchObject([{ detail: { roomId } }])
  expect(await stateOf(world, roomId)).toEqual(before)
  expect(await tickNow(world)).toEqual([roomId])
  const day = await world.ok(full.owner, 'getDay', { params: { roomId, date: 'today' } })
  expect(day.isOpened).toBe(true)
  expect(day.tasks.length).toBeGreaterThan(0)
  expect(await tickNow(world)).toEqual([])
})

test('a sign-off cut off in the middle books nothing, says so, and its repeat is booked once', async () => {
  await tickNow(world)
  const task = (await tasksOf(world, full.owner, roomId)).find((each) => each.ruleId === 'room-equipment')!
  const signOff = () =>
    world.call(full.standIn, 'signOffTask', {
      params: { roomId, taskId: task.id },
      body: {},
      key: 'cut-off-in-the-middle',
    })
  const before = await stateOf(world, roomId)
  const cut = await cutBeforeCommit(signOff)
  expect([cut.status, cut.problem?.code]).toEqual([503, 'unavailable'])
  expect(cut.problem?.detail).toContain('Nothing was saved')
  expect(await stateOf(world, roomId)).toEqual(before)
  const { prisma } = world.database
  expect(await prisma.signOff.count({ where: { roomId, taskId: task.id } })).toBe(0)
  expect((await signOff()).status).toBe(200)
  expect((await signOff()).status).toBe(200)
  expect(await prisma.signOff.count({ where: { roomId, taskId: task.id } })).toBe(1)
  const facts = await prisma.fact.findMany({ where: { roomId, signOff: { taskId: task.id } } })
  expect(facts).toHaveLength(1)
})

test('while the database is away every answer is a 503 that says so, and it heals by itself', async () => {
  const name = bystander.escapeIdentifier(new URL(world.database.connectionString).pathname.slice(1))
  const server = new URL(world.database.connectionString)
  server.pathname = '/postgres'
  const outside = new pg.Client({ connectionString: server.href })
  await outside.connect()
  const newcomer = await world.person('Nobody has asked for yet', { roomId, role: 'viewer' })
  try {
    await outside.query(`ALTER DATABASE ${name} ALLOW_CONNECTIONS false`)
    await outside.query(`SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = $1 AND pid <> $2`, [
      new URL(world.database.connectionString).pathname.slice(1),
      await pidOf(bystander),
    ])
    for (const ask of [
      () => world.call(null, 'getHealth'),
      () => world.call(full.owner, 'getMe'),
      () => world.call(newcomer, 'getMe'),
      () => world.call(full.owner, 'getDay', { params: { roomId, date: 'today' } }),
      () =>
        world.call(full.owner, 'recordFact', {
          params: { roomId },
          body: { kind: 'observation', subjectId: roomId, data: { note: 'is anybody there' } },
        }),
    ]) {
      const answer = await ask()
      expect([answer.status, answer.problem?.code]).toEqual([503, 'unavailable'])
    }
    await expect(tickNow(world)).rejects.toThrow()
  } finally {
    await outside.query(`ALTER DATABASE ${name} ALLOW_CONNECTIONS true`)
    await outside.end()
  }
  expect((await world.call(null, 'getHealth')).status).toBe(200)
  expect((await world.call(newcomer, 'getMe')).status).toBe(200)
  expect(await tickNow(world)).toEqual([roomId])
})

async function pidOf(client: pg.Client): Promise<number> {
  const { rows } = await client.query<{ pid: number }>('SELECT pg_backend_pid() AS pid')
  return rows[0]!.pid
}
