import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { keepReadingsHere, makeRoomForReadings, takeMessage } from '@fryward/room'
import type { Broker, ChangeBroker, Device, Gauge } from '@fryward/shared'
import { ensureLocalCertificate } from '@fryward/standalone'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { withClient } from '../support/database-admin.ts'
import { openBroker } from '../support/open-broker.ts'
import { openWorld, type World } from '../support/world.ts'
import { type FullRoom, minutesFrom, openFullRoom } from './full-room.ts'

let world: World
let full: FullRoom
let broker: Awaited<ReturnType<typeof openBroker>>
let device: Device
let gauge: Gauge
const inRoom = () => ({ roomId: full.roomId })

beforeAll(async () => {
  world = await openWorld({ brokers: { mayReachThisMachine: true } })
  full = await openFullRoom(world)
  await makeRoomForReadings(world.contextOf(full.owner))
  broker = await openBroker()
  const made = await world.ok(full.owner, 'createDevice', { params: inRoom(), body: { name: 'Rack' } })
  const params = { ...inRoom(), deviceId: made.device.id }
  gauge = await world.ok(full.owner, 'createGauge', {
    params,
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id },
  })
  const body = { topic: 'home/rack', version: made.device.version }
  device = await world.ok(full.owner, 'changeDevice', { params, body })
  await name({})
})
afterAll(async () => {
  await world.close()
  await broker.close()
})

const name = (more: Partial<ChangeBroker>, url = broker.url) =>
  world.ok(full.owner, 'changeBroker', {
    params: inRoom(),
    body: { url, username: 'room', password: 'sea-salt', authority: null, ...more },
  })
const state = () => world.ok(full.viewer, 'getBroker', { params: inRoom() })
const until = (is: (broker: Broker) => unknown) => expect.poll(async () => Boolean(is(await state()))).toBe(true)
const connected = () => until(({ isConnected }) => isConnected)
const troubled = async (sentence: RegExp) => {
  await until(({ isConnected, trouble }) => !isConnected && sentence.test(trouble ?? ''))
}
const values = async () => {
  const query = { from: minutesFrom(world, -120), to: minutesFrom(world, 1), points: 2000 }
  const { points } = await world.ok(full.viewer, 'getSeries', { params: { ...inRoom(), gaugeId: gauge.id }, query })
  return points.map(({ mean }) => mean)
}
const refusals = async () =>
  (await state()).refusals.map(({ topic, reason, detail, number }) => ({ topic, reason, detail, number }))
const minutesSince = (at: string | null | undefined) =>
  Math.abs(Date.parse(at ?? '') - Date.parse(world.clock.now())) / 60_000
const acknowledged = (number: number) => expect.poll(() => broker.acknowledged.length).toBeGreaterThanOrEqual(number)
/** Runs `work` while no reading can be committed. */
const whileNothingCommits = (work: () => Promise<void>) =>
  withClient(world.database.connectionString, async (client) => {
    await client.query('BEGIN; LOCK TABLE telemetry.stale_hour IN EXCLUSIVE MODE')
    await work()
    await client.query('COMMIT')
  })

test('a number alone at the topic of a gauge, and a post at that of its device, are kept before they are acknowledged', async () => {
  await connected()
  await broker.publish('home/rack/t1', '25.4')
  await broker.publish('home/rack', JSON.stringify([{ gauge: 't1', value: 25.5, at: minutesFrom(world, -3) }]))
  await broker.publish('home/rack', JSON.stringify([{ n: 't1', u: 'Cel', v: 25.6, t: -120 }]))
  await acknowledged(3)
  expect(await values()).toEqual([25.5, 25.6, 25.4])
  const [found] = await world.ok(full.viewer, 'listDevices', { params: inRoom() })
  // To the minute: any of the three may have been the first to say so, and each is of a moment of its own.
  expect(minutesSince(found?.lastSeenAt)).toBeLessThan(1)
})

test('numbers that come while a commit is under way share the next, and each is kept and acknowledged', async () => {
  const before = broker.acknowledged.length
  const asked = vi.spyOn(world.database.pool, 'query')
  const isOf = (what: RegExp) => asked.mock.calls.map(([query]) => what.test(JSON.stringify(query) ?? ''))
  world.clock.advanceMinutes(1)
  const numbers = Array.from({ length: 60 }, (_, i) => 25 + i / 100)
  await whileNothingCommits(async () => {
    await Promise.all(numbers.map((number) => broker.publish('home/rack/t1', String(number))))
    const answered = () =>
      isOf(/FROM[^,]*device\\"/).filter((is, call) => is && asked.mock.settledResults[call]?.type === 'fulfilled')
    await expect.poll(() => answered().length).toBe(60)
  })
  await acknowledged(before + 60)
  const commits = isOf(/"keep-readings"/).filter(Boolean)
  asked.mockRestore()
  expect(commits.length).toBeGreaterThan(0)
  expect(commits.length).toBeLessThan(10)
  const { rows } = await world.database.pool.query('SELECT value FROM telemetry.reading WHERE at >= $1 ORDER BY at', [
    world.clock.now(),
  ])
  expect(rows.map(({ value }) => value)).toEqual(numbers)
  world.clock.advanceMinutes(1)
})

test('what is no reading is named with its topic and its reason, and does not stand in the way of what is', async () => {
  const before = broker.acknowledged.length
  await broker.publish('home/rack/t1', 'nan')
  await broker.publish('home/rack/t1', 'nan')
  await broker.publish('home/rack/t9', '25')
  await broker.publish('home/rack/t1', '85')
  await broker.publish('home/rack', Buffer.from([0, 255, 1]))
  await broker.publish('home/rack', '25')
  world.clock.advanceMinutes(1)
  await broker.publish('home/rack/t1', '25.7')
  await acknowledged(before + 7)
  expect((await values()).at(-1)).toBe(25.7)
  const told = await refusals()
  expect(told).toHaveLength(4)
  expect(told).toEqual(
    expect.arrayContaining([
      expect.objectContaining({
        topic: 'home/rack/t1',
        reason: 'unreadable',
        number: 2,
        detail: expect.stringMatching(/"nan" is neither/),
      }),
      expect.objectContaining({ topic: 'home/rack/t9', reason: 'unknown_gauge', number: 1 }),
      expect.objectContaining({ topic: 'home/rack/t1', reason: 'beyond_sense' }),
      expect.objectContaining({
        topic: 'home/rack',
        reason: 'unreadable',
        number: 2,
        detail: expect.stringMatching(/A number alone goes to/),
      }),
    ]),
  )
})

test('of two that are no reading the newer is told, though the older is noted second', async () => {
  const message = { topic: 'home/rack/t3', isLate: false }
  const ctx = (minutes: number) => ({ ...world.contextOf(full.owner), now: minutesFrom(world, minutes) })
  const keeper = keepReadingsHere(world.database)
  const take = (minutes: number, said: string) =>
    takeMessage({ ctx: ctx(minutes), keeper, roomId: full.roomId, message: { ...message, payload: Buffer.from(said) } })
  await take(-1, 'newer')
  await take(-2, 'older')
  const [told] = (await refusals()).filter(({ topic }) => topic === message.topic)
  expect(told).toMatchObject({ number: 2, detail: expect.stringContaining('newer') })
})

test('topics of nobody here are passed over, and so is what the broker had kept from before', async () => {
  const before = { values: await values(), refusals: await refusals() }
  await broker.publish('home/racks/t1', '25')
  await broker.publish('garden/t1', '25')
  world.clock.advanceMinutes(1)
  await broker.publish('home/rack/t1', '19', { retain: true })
  await expect.poll(async () => (await values()).length).toBe(before.values.length + 1)
  broker.cut()
  await connected()
  await broker.publish('home/rack', JSON.stringify({ gauge: 't1', value: 25.8, at: minutesFrom(world, -0.5) }))
  await expect.poll(async () => (await values()).filter((value) => value === 25.8)).toHaveLength(1)
  expect((await values()).filter((value) => value === 19)).toHaveLength(1)
  expect(await refusals()).toEqual(before.refusals)
})

test('what came while the line was cut comes when it stands again; without a time of its own it is of no time', async () => {
  const before = (await values()).length
  const { port } = broker
  await broker.close()
  await troubled(/Nothing listens at localhost:|ended the connection/)
  world.clock.advanceMinutes(10)
  broker = await openBroker({ port })
  await connected()
  // The broker that came back knows no session: what it heard before it fell was acknowledged then.
  await broker.publish('home/rack/t1', '26')
  await expect.poll(async () => (await values()).length).toBe(before + 1)
  broker.cut()
  const waits = broker.comers.length
  world.clock.advanceMinutes(10)
  await broker.publish('home/rack/t1', '27')
  await broker.publish('home/rack', JSON.stringify({ gauge: 't1', value: 28, at: minutesFrom(world, -4) }))
  await expect.poll(() => broker.comers.length).toBeGreaterThan(waits)
  await expect.poll(async () => (await values()).at(-1)).toBe(28)
  await until(({ refusals: [newest] }) => newest?.reason === 'no_time')
  expect(await values()).not.toContain(27)
  world.clock.advanceMinutes(1)
  await broker.publish('home/rack/t1', '26.1')
  await expect.poll(async () => (await values()).at(-1)).toBe(26.1)
})

test('a wrong password is said in a sentence, the right one is never told again, and no other address is told it', async () => {
  await name({ password: 'wrong' })
  await troubled(/^The broker refuses the user name or the password/)
  const right = await name({})
  await connected()
  expect(right).toMatchObject({ hasPassword: true, username: 'room' })
  expect(JSON.stringify(right)).not.toContain('sea-salt')
  const rows = await world.database.pool.query(`SELECT row_to_json(broker_password)::text AS row FROM broker_password
    UNION ALL SELECT row_to_json(broker)::text FROM broker UNION ALL SELECT detail::text FROM audit_entry
    UNION ALL SELECT body::text FROM idempotency_key`)
  for (const { row } of rows.rows) expect(row).not.toContain('sea-salt')
  await name({ password: undefined })
  expect(await state()).toMatchObject({ hasPassword: true })
  expect(await name({ password: undefined }, 'mqtt://other.example')).toMatchObject({ hasPassword: false })
})

test('a certificate is looked at before anything is said, and an authority of one’s own is believed for this broker', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'fryward-mqtt-'))
  const made = await ensureLocalCertificate({ dataDir: folder, names: ['localhost'], addresses: [], now: new Date() })
  const [cert, key, authority] = await Promise.all(
    [made.certFile, made.keyFile, made.authorityFile].map((path) => readFile(path, 'utf8')),
  )
  await rm(folder, { recursive: true })
  const safe = await openBroker({ tls: { cert: cert!, key: key! } })
  await name({}, safe.url)
  await troubled(/signed by nobody that is believed here/)
  expect(safe.comers).toEqual([])
  await name({ authority: authority! }, safe.url)
  await connected()
  world.clock.advanceMinutes(1)
  await safe.publish('home/rack/t1', '26.5')
  await expect.poll(async () => (await values()).at(-1)).toBe(26.5)
  await safe.close()
})

test('addresses, topics and certificates that are none are refused in a sentence', async () => {
  const refused = async (body: object) =>
    (
      await world.call(full.owner, 'changeBroker', {
        params: inRoom(),
        body: { url: broker.url, username: null, authority: null, ...body },
      })
    ).problem?.fields?.map(({ path, message }) => `${path}: ${message}`)
  expect(await refused({ url: 'http://broker.lan' })).toEqual([expect.stringMatching(/^url: .*mqtt:\/\/broker.lan/)])
  expect(await refused({ url: 'mqtt://broker.lan:99999' })).toEqual([expect.stringMatching(/^url: Give a port/)])
  expect(await refused({ username: 'room\r\nFLUSHALL' })).toEqual([expect.stringMatching(/^username: .*line breaks/)])
  const pem = '-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----'
  expect(await refused({ authority: pem })).toEqual([expect.stringMatching(/^authority: This is no certificate/)])
  const shelf = await world.ok(full.owner, 'createDevice', { params: inRoom(), body: { name: 'Shelf' } })
  const change = (topic: string) =>
    world.call(full.owner, 'changeDevice', {
      params: { ...inRoom(), deviceId: shelf.device.id },
      body: { topic, version: shelf.device.version },
    })
  for (const topic of ['home/#', 'home/+/t', '/home', '$SYS/load', 'a b', device.topic ?? ''])
    expect((await change(topic)).problem?.code, topic).toBe('invalid_input')
})

test('a broker on this machine itself is refused unless the server lets it be', async () => {
  const wary = await openWorld({ brokers: { mayReachThisMachine: false } })
  const room = await openFullRoom(wary)
  for (const url of ['mqtt://2130706433', 'mqtts://169.254.169.254']) {
    await wary.ok(room.owner, 'changeBroker', {
      params: { roomId: room.roomId },
      body: { url, username: null, authority: null },
    })
    await expect
      .poll(async () => (await wary.ok(room.owner, 'getBroker', { params: { roomId: room.roomId } })).trouble)
      .toMatch(/is this machine itself.*LOCAL_BROKERS=1/)
  }
  await wary.close()
})
