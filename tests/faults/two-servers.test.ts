import { makeRoomForReadings } from '@fryward/room'
import type { Device, Gauge, Room } from '@fryward/shared'
import { addressOf } from '@fryward/shared'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { openStream } from '../api/event-stream.ts'
import { forkProgram, type Program } from '../support/fork-program.ts'
import { openBroker } from '../support/open-broker.ts'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

/** Two API processes and two schedulers behind one PostgreSQL, and a person and a device who come by either. */
let world: World
let broker: Awaited<ReturnType<typeof openBroker>>
let servers: Program[] = []
const schedulers: Program[] = []
let owner: Person
let room: Room
let device: Device
let token: string
let gauge: Gauge
const settings = () => ({
  DATABASE_URL: world.database.connectionString,
  AUTH_SECRET: 'a secret for tests only, long enough for the schema',
  PUBLIC_URL: 'http://localhost:3000',
  LOCAL_BROKERS: '1',
})
const params = () => ({ roomId: room.id })
const sees = (what: () => unknown) => vi.waitFor(what, { timeout: 60_000, interval: 50 })
const address = (of: number) => servers[of]?.said.url ?? ''
const postTo = (of: number, body: unknown) =>
  fetch(new URL(addressOf('postReadings'), address(of)), {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
const ago = (minutes: number) => new Date(Date.now() - minutes * 60_000).toISOString()

beforeAll(async () => {
  await ensurePrograms(() => undefined)
  // The processes go by the machine's own clock.
  world = await openWorld({ at: new Date().toISOString() })
  broker = await openBroker()
  ;({ owner, room } = await openRoom(world))
  await makeRoomForReadings(world.contextOf(owner))
  ;({ device, token } = await world.ok(owner, 'createDevice', { params: params(), body: { name: 'Rack' } }))
  const ofDevice = { ...params(), deviceId: device.id }
  const [tank] = await world.ok(owner, 'listTanks', { params: params() })
  gauge = await world.ok(owner, 'createGauge', {
    params: ofDevice,
    body: { key: 't1', quantity: 'temperature', subjectId: tank!.id, high: 28 },
  })
  await world.ok(owner, 'changeDevice', { params: ofDevice, body: { topic: 'home/rack', version: device.version } })
  const named = { url: broker.url, username: 'room', password: 'sea-salt', authority: null }
  await world.ok(owner, 'changeBroker', { params: params(), body: named })
  servers = await Promise.all([forkProgram('api', settings()), forkProgram('api', settings())])
})
afterAll(async () => {
  await Promise.all([...servers, ...schedulers].map((program) => program.kill()))
  await world.close()
  await broker.close()
})

const readings = async () =>
  (await world.database.pool.query<{ value: number }>('SELECT value FROM telemetry.reading ORDER BY at')).rows.map(
    ({ value }) => value,
  )

test('what is written by one reaches whoever listens at the other', async () => {
  const streams = await Promise.all(
    [0, 1].map((of) => openStream({ address: address(of), person: owner, roomId: room.id })),
  )
  const note = { kind: 'observation', subjectId: room.id, data: { note: 'clear water' } }
  const written = await fetch(new URL(addressOf('recordFact', params()), address(0)), {
    method: 'POST',
    headers: { cookie: owner.cookie, 'content-type': 'application/json' },
    body: JSON.stringify(note),
  })
  expect(written.status, await written.clone().text()).toBe(201)
  for (const stream of streams) {
    await stream.until((events) => events.length > 0)
    stream.close()
  }
  expect(streams[1]?.events[0]).toEqual(streams[0]?.events[0])
})

test('one of them hears the broker, each message is kept once, and when it dies the other takes over', async () => {
  await sees(() => expect(broker.comers.length).toBeGreaterThan(0))
  await broker.publish('home/rack', JSON.stringify({ gauge: 't1', value: 25, at: ago(40) }))
  await sees(async () => expect(await readings()).toEqual([25]))
  const clients = () => broker.comers.filter((id) => id !== 'device')
  expect(clients()).toHaveLength(1)
  const { rows } = await world.database.pool.query<{ pid: number }>(
    `SELECT pid FROM pg_locks WHERE locktype = 'advisory' AND objid = 72707372 AND granted
       AND database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
  )
  expect(rows).toHaveLength(1)
  // Its connection goes, and with it the lock: it stops listening before it tries again.
  await world.database.pool.query('SELECT pg_terminate_backend($1)', [rows[0]?.pid])
  await sees(() => expect(clients()).toHaveLength(2))
  await broker.publish('home/rack', JSON.stringify({ gauge: 't1', value: 26, at: ago(39) }))
  await sees(async () => expect(await readings()).toEqual([25, 26]))
  expect(new Set(clients()).size).toBe(1)
})

test('one alarm is raised for one trouble, however many look at once', async () => {
  for (const minutes of [30, 24, 18, 12, 6, 1])
    expect((await postTo(minutes % 4 === 0 ? 0 : 1, { gauge: 't1', value: 29.5, at: ago(minutes) })).status).toBe(201)
  schedulers.push(...(await Promise.all([forkProgram('scheduler', settings()), forkProgram('scheduler', settings())])))
  await sees(async () =>
    expect(await world.database.prisma.alarm.findMany({ where: { gaugeId: gauge.id } })).toMatchObject([
      { kind: 'too_high', clearedAt: null },
    ]),
  )
  // Each has ended its first round by the time that it is ready.
  expect(await world.database.prisma.alarm.count()).toBe(1)
})

test('a token that was revoked at one is refused at the other within a second', async () => {
  for (const of of [0, 1]) expect((await postTo(of, { gauge: 't1', value: 29.4 })).status).toBe(201)
  const revoked = await fetch(new URL(addressOf('revokeDevice', { ...params(), deviceId: device.id }), address(0)), {
    method: 'POST',
    headers: { cookie: owner.cookie, 'content-type': 'application/json' },
    body: '{}',
  })
  expect(revoked.status).toBe(200)
  await new Promise((resolve) => setTimeout(resolve, 1000))
  for (const of of [0, 1]) expect((await postTo(of, { gauge: 't1', value: 29.4 })).status).toBe(401)
})
