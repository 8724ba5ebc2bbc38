import { createApi } from '@fryward/api'
import type { ServerState } from '@fryward/shared'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { cookieOf, password } from '../api/door.ts'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type Person, type World } from '../support/world.ts'

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
  await vi.waitFor(async () => expect((await note()).statusCode).toBe(201))
})
