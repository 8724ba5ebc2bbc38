import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { createApi } from '@fryward/api'
import { createInbox } from '@fryward/readings'
import { addUpReadings, dropOldReadings, makeRoomForReadings } from '@fryward/room'
import { beat, sweep } from '@fryward/scheduler'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type World } from '../support/world.ts'
import { keptLog, tickNow } from './room-clock.ts'

let world: World
let full: FullRoom
const ctx = () => world.contextOf(full.owner)

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const read = async (text: string) => (await world.database.pool.query(text)).rows

test('months that are older than readings are kept are dropped whole, and their hours stay', async () => {
  await makeRoomForReadings({ ...ctx(), now: '2025-11-10T00:00:00.000Z' })
  await makeRoomForReadings(ctx())
  await read(`INSERT INTO telemetry.reading VALUES (7, '2025-10-20T10:10:00Z', 25), (7, '2025-10-20T10:50:00Z', 27),
    (7, '2026-03-01T10:10:00Z', 26), (7, '2025-06-01T00:00:00Z', 20)`)
  await read(`INSERT INTO telemetry.stale_hour VALUES (7, '2025-10-20T10:00:00Z'), (7, '2026-03-01T10:00:00Z')`)
  const dropped = await dropOldReadings(ctx(), 2)
  expect(dropped).toEqual(['reading_2025_10', 'reading_2025_11', 'reading_2025_12'])
  expect(await read('SELECT value FROM telemetry.reading WHERE channel = 7')).toEqual([{ value: 26 }])
  await addUpReadings(ctx())
  expect(await read('SELECT low, high FROM telemetry.hour WHERE channel = 7 ORDER BY hour')).toEqual([
    { low: 25, high: 27 },
    { low: 26, high: 26 },
  ])
  await sweep({ database: world.database, now: world.clock.now, log: keptLog(), keepMonths: 2 })
  expect(await read('SELECT value FROM telemetry.reading WHERE channel = 7')).toEqual([{ value: 26 }])
})

const at = (minute: number, second = 0) => Date.parse('2026-03-02T10:00:00Z') + minute * 60_000 + second * 1000
const hourOf = (channel: number) => read(`SELECT number, sum FROM telemetry.hour WHERE channel = ${channel}`)

test('readings that commit while their hour is being added up are counted', async () => {
  const { pool } = world.database
  await createInbox(pool).keep([{ channel: 8, at: at(0), value: 25 }])
  const client = await pool.connect()
  await client.query('BEGIN')
  await createInbox(client).keep([{ channel: 8, at: at(1), value: 27 }])
  const adding = addUpReadings(ctx())
  // It has either passed over the hour by then, or waits for it.
  await new Promise((resolve) => setTimeout(resolve, 200))
  await client.query('COMMIT')
  client.release()
  await adding
  await addUpReadings(ctx())
  expect(await hourOf(8)).toEqual([{ number: 2, sum: 52 }])
})

test('thousands at once are kept once each, whatever of them was there and however often they come', async () => {
  const { pool } = world.database
  const many = Array.from({ length: 3000 }, (_, i) => ({ channel: 9, at: at(0, i), value: i }))
  const count = async () => (await read('SELECT count(*)::int AS n FROM telemetry.reading WHERE channel = 9'))[0].n
  const [one, other] = [createInbox(pool), createInbox(pool)]
  await one.keep(many.slice(0, 10))
  expect(await count()).toBe(10)
  await Promise.all([one.keep(many), other.keep(many.toReversed()), one.keep(many)])
  expect(await count()).toBe(3000)
  const fresh = many.map((reading) => ({ ...reading, channel: 10 }))
  await one.keep(fresh)
  await addUpReadings(ctx())
  expect(await hourOf(10)).toEqual([{ number: 3000, sum: (2999 * 3000) / 2 }])
  expect(await hourOf(9)).toEqual(await hourOf(10))
})

test('gauge, moment and value are kept as they came, to the millisecond and the last bit, few or many', async () => {
  const { pool } = world.database
  const odd = [0.1, -0, 1e-300, Number.MAX_VALUE, -5.000000000000001, 25.4]
  const rows = (channel: number, number: number) =>
    Array.from({ length: number }, (_, i) => ({
      ...{ channel, at: Date.parse('1999-12-31T23:59:58.999Z') + i * 7_654_321_001, value: odd[i % odd.length]! },
    }))
  for (const [channel, number] of [
    [2_147_483_647, 6],
    [11, 1200],
    [12, 4500],
  ] as const) {
    await createInbox(pool).keep(rows(channel, number))
    const kept = await read(`SELECT channel, (extract(epoch FROM at) * 1000)::float8 AS at, value
      FROM telemetry.reading WHERE channel = ${channel} ORDER BY reading.at`)
    expect(kept).toEqual(rows(channel, number))
  }
})

test('a server that was off says how long, and calls no gauge silent for that time', async () => {
  await tickNow(world)
  const { device } = await world.ok(full.owner, 'createDevice', {
    params: { roomId: full.roomId },
    body: { name: 'Rack' },
  })
  const gauge = await world.ok(full.owner, 'createGauge', {
    params: { roomId: full.roomId, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id, silentAfterMinutes: 30 },
  })
  const silent = async () =>
    (await world.ok(full.viewer, 'listAlarms', { params: { roomId: full.roomId } })).filter(
      (alarm) => alarm.gauge.id === gauge.id,
    )
  const offFrom = world.clock.now()
  world.clock.advanceMinutes(180)
  await tickNow(world)
  expect(await world.ok(full.viewer, 'listAbsences', { params: { roomId: full.roomId } })).toEqual([
    { from: offFrom, to: world.clock.now() },
  ])
  expect(await silent()).toEqual([])
  for (let minute = 0; minute < 32; minute += 4) {
    world.clock.advanceMinutes(4)
    await tickNow(world)
  }
  expect(await silent()).toMatchObject([{ kind: 'silent' }])
})

test('the heartbeat is a post each time, and one that is not taken is said', async () => {
  let status = 204
  const methods: (string | undefined)[] = []
  const server = createServer((request, response) => {
    methods.push(request.method)
    response.writeHead(status).end()
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/mine`
  const log = keptLog()
  expect(await beat(url, log)).toBe(true)
  status = 500
  expect(await beat(url, log)).toBe(false)
  await new Promise((resolve) => server.close(resolve))
  expect(await beat(url, log)).toBe(false)
  expect(methods).toEqual(['POST', 'POST'])
  expect(log.warnings).toHaveLength(2)
})

test('metrics are for whoever brings their token, and nobody without one', async () => {
  const app = await createApi({
    ...{ database: world.database, authSecret: 'x'.repeat(40), publicUrl: 'http://localhost:3000', version: 'test' },
    metricsToken: 'a token of sixteen',
  })
  const ask = (token?: string) =>
    app.inject({
      url: '/metrics',
      headers: { host: 'localhost:3000', ...(token && { authorization: `Bearer ${token}` }) },
    })
  await app.inject({ url: '/api/v1/alive', headers: { host: 'localhost:3000' } })
  const { statusCode, body } = await ask('a token of sixteen')
  expect([statusCode, (await ask('another token')).statusCode, (await ask()).statusCode]).toEqual([200, 404, 404])
  expect(body).toMatch(/fryward_alarms_standing\{kind="silent"\} 1/)
  expect(body).toMatch(/fryward_request_seconds_count\{method="GET",route="\/api\/v1\/alive",status="200"\} 1/)
  expect((await world.app.inject({ url: '/metrics', headers: { host: 'localhost:3000' } })).statusCode).toBe(404)
  await app.close()
})
