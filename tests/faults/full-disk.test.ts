import { join } from 'node:path'
import { createApi } from '@fryward/api'
import type { ServerState } from '@fryward/shared'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { cookieOf, password } from '../api/door.ts'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { mountSmallDisk } from '../support/small-disk.ts'
import { databaseUrlOf, StandaloneRun } from '../support/standalone-run.ts'
import { openWorld, type Person, type World } from '../support/world.ts'
import { openRoom, reckon, startWriters } from './numbered-notes.mjs'

let world: World
let full: FullRoom
let app: FastifyInstance
let state: NonNullable<ServerState['disk']>['state'] = 'plenty'

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  app = await createApi({
    database: world.database,
    authSecret: 'a secret for tests only, long enough for the schema',
    publicUrl: 'http://localhost:3000',
    version: 'test',
    now: world.clock.now,
    disk: { look: async () => ({ state, freeBytes: 5e8, totalBytes: 32e9 }) },
  })
})
afterAll(async () => {
  await app.close()
  await world.close()
})

const ask = (person: Person, method: 'GET' | 'POST', path: string, payload?: object) =>
  app.inject({
    ...{ method, url: `/api/v1${path}`, headers: { host: 'localhost:3000', cookie: person.cookie } },
    ...(payload ? { payload } : {}),
  })
const note = () =>
  ask(full.caretaker, 'POST', `/rooms/${full.roomId}/facts`, {
    ...{ kind: 'observation', subjectId: full.roomId, data: { note: 'the disk hums' } },
  })
const read = () => ask(full.caretaker, 'GET', `/rooms/${full.roomId}/days/today`)

test('while the disk is nearly full, writes are refused in a sentence, reads and signing in go on, the owner is told', async () => {
  state = 'little'
  expect((await note()).statusCode).toBe(201)
  state = 'full'
  const refused = await note()
  expect(refused.statusCode).toBe(507)
  expect(refused.json()).toMatchObject({
    code: 'disk_full',
    detail: expect.stringMatching(/reading goes on.*Make room/),
  })
  expect((await read()).statusCode).toBe(200)
  const signedIn = await app.inject({
    ...{ method: 'POST', url: '/api/auth/sign-in/email', headers: { host: 'localhost:3000' } },
    payload: { email: 'nobody@example.test', password },
  })
  expect([signedIn.statusCode, cookieOf(signedIn)]).toEqual([401, ''])
  const told = await ask(full.owner, 'GET', '/server/state')
  expect(told.json()).toEqual({ disk: { state: 'full', freeBytes: 5e8, totalBytes: 32e9 }, troubles: [] })
  state = 'plenty'
  expect((await note()).statusCode).toBe(201)
})

test('a database that finds no room on its disk is told the same way, and reads go on', async () => {
  // PostgreSQL itself says so: a trigger stands in for the disk.
  const { pool } = world.database
  await pool.query(`CREATE FUNCTION no_room() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN RAISE EXCEPTION 'could not extend file: No space left on device' USING ERRCODE = 'disk_full'; END $$`)
  await pool.query('CREATE TRIGGER no_room BEFORE INSERT ON fact FOR EACH ROW EXECUTE FUNCTION no_room()')
  const refused = await note()
  expect([refused.statusCode, refused.json().code]).toEqual([507, 'disk_full'])
  expect((await read()).statusCode).toBe(200)
  await pool.query('DROP TRIGGER no_room ON fact')
  await expect.poll(async () => (await note()).statusCode).toBe(201)
})

// Really full: `npm start` on a disk of 400 MiB, where this machine lets one be mounted.
const disk = mountSmallDisk(400)
let run: StandaloneRun | undefined
afterAll(async () => {
  await run?.stop()
  disk?.remove()
})
if (disk)
  test('a disk that really fills during a round loses nothing, and everything goes on once there is room', async () => {
    const dataDir = join(disk.folder, 'data')
    run = await StandaloneRun.launch({ DATA_DIR: dataDir, REQUESTS_PER_MINUTE: '1000000' })
    await run.waitFor('Ctrl-C stops it')
    const origin = `http://127.0.0.1:${run.port}`
    const room = await openRoom(origin, /\/claim and enter (\S+)/.exec(run.output)![1]!)
    const headers = { cookie: room.cookie, 'content-type': 'application/json' }
    const get = (path: string) => fetch(`${origin}/api/v1${path}`, { headers })
    const observe = () =>
      fetch(`${origin}/api/v1/rooms/${room.id}/facts`, {
        ...{ method: 'POST', headers: { ...headers, 'idempotency-key': 'seen-while-the-disk-was-full' } },
        body: JSON.stringify({ kind: 'observation', subjectId: room.id, data: { note: 'the disk hums' } }),
      })
    const writers = startWriters(room, { restMs: 50 })
    await vi.waitFor(() => expect(writers.acknowledged.size).toBeGreaterThan(10), 60_000)
    // To the last byte, while everybody writes: what looks at the disk has not seen it yet.
    disk.fill()
    await vi.waitFor(async () => expect((await observe()).status).toBe(507), { timeout: 60_000, interval: 100 })
    const told = (await (await observe()).json()) as { detail: string }
    expect(told.detail).toMatch(/Nothing was saved; reading goes on\. Make room/)
    expect((await get(`/rooms/${room.id}/days/today`)).status).toBe(200)
    // The disk is looked at every five seconds.
    await vi.waitFor(
      async () => expect(await (await get('/server/state')).json()).toMatchObject({ disk: { state: 'full' } }),
      { timeout: 60_000, interval: 500 },
    )
    const before = writers.acknowledged.size
    disk.makeRoom()
    await vi.waitFor(async () => expect((await observe()).status).toBe(201), { timeout: 60_000, interval: 100 })
    await vi.waitFor(() => expect(writers.acknowledged.size).toBeGreaterThan(before + 10), 60_000)
    await writers.stop()
    const kept = await reckon(writers, { connectionString: databaseUrlOf(dataDir), room })
    expect([kept, writers.refusals]).toEqual([{ lost: 0, doubled: 0 }, []])
  })
