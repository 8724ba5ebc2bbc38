import { createApi } from '@fryward/api'
import { makeRoomForReadings } from '@fryward/room'
import pg from 'pg'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { forkProgram } from '../support/fork-program.ts'
import { openBroker } from '../support/open-broker.ts'
import { openRoom, openWorld, type World } from '../support/world.ts'

let world: World
let broker: Awaited<ReturnType<typeof openBroker>>
const secret = 'a secret for tests only, long enough for the schema'

beforeAll(async () => {
  await ensurePrograms(() => undefined)
  // The process goes by the machine's own clock.
  world = await openWorld({ at: new Date().toISOString() })
  broker = await openBroker()
})
afterAll(async () => {
  await world.close()
  await broker.close()
})

test('a server killed before a reading is committed has not acknowledged it, and the next one keeps it once', async () => {
  const { owner, room } = await openRoom(world)
  await makeRoomForReadings(world.contextOf(owner))
  const params = { roomId: room.id }
  const { device } = await world.ok(owner, 'createDevice', { params, body: { name: 'Rack' } })
  const ofDevice = { ...params, deviceId: device.id }
  const [tank] = await world.ok(owner, 'listTanks', { params })
  const gauge = await world.ok(owner, 'createGauge', {
    params: ofDevice,
    body: { key: 't1', quantity: 'temperature', subjectId: tank!.id },
  })
  await world.ok(owner, 'changeDevice', { params: ofDevice, body: { topic: 'home/rack', version: device.version } })
  const named = { url: broker.url, username: 'room', password: 'sea-salt', authority: null }
  await world.ok(owner, 'changeBroker', { params, body: named })
  const { connectionString } = world.database
  const child = await forkProgram('api', { DATABASE_URL: connectionString, AUTH_SECRET: secret, LOCAL_BROKERS: '1' })
  const sees = (what: () => unknown) => vi.waitFor(what, { timeout: 60_000, interval: 50 })
  await sees(async () => expect(await world.ok(owner, 'getBroker', { params })).toMatchObject({ isConnected: true }))

  const holder = new pg.Client({ connectionString })
  await holder.connect()
  await holder.query('BEGIN; LOCK TABLE telemetry.reading IN ACCESS EXCLUSIVE MODE')
  const at = new Date(Date.now() - 60_000).toISOString()
  await broker.publish('home/rack', JSON.stringify([{ gauge: 't1', value: 25.4, at }]))
  const waiting = `SELECT pid FROM pg_stat_activity
    WHERE datname = current_database() AND wait_event_type = 'Lock' AND query LIKE '%telemetry.reading %'`
  await sees(async () => expect((await world.database.pool.query(waiting)).rowCount).toBe(1))
  await child.kill()
  // What the dead server had begun goes with it.
  await world.database.pool.query(`SELECT pg_terminate_backend(pid) FROM (${waiting}) AS waits`)
  await holder.query('ROLLBACK')
  expect(broker.acknowledged).toEqual([])

  const next = await createApi({
    ...{ database: world.database, authSecret: secret, publicUrl: 'http://localhost:3000', version: 'next' },
    brokers: { mayReachThisMachine: true },
  })
  await next.ready()
  const kept = `SELECT value FROM telemetry.reading`
  await sees(() => expect(broker.acknowledged).toHaveLength(1))
  expect((await holder.query(kept)).rows).toEqual([{ value: 25.4 }])
  const query = { from: new Date(Date.now() - 3_600_000).toISOString(), to: new Date().toISOString() }
  const series = await world.ok(owner, 'getSeries', { params: { ...params, gaugeId: gauge.id }, query })
  expect(series.points.map(({ number }) => number)).toEqual([1])
  await holder.end()
  await next.close()
})
