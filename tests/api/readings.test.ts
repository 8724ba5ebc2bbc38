import { gzipSync } from 'node:zlib'
import { makeRoomForReadings, watchGauges } from '@fryward/room'
import { type Device, type Gauge, PostedReadingsSchema } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type World } from '../support/world.ts'
import { type FullRoom, minutesFrom, openFullRoom } from './full-room.ts'
import { send } from './send.ts'

let world: World
let full: FullRoom
let device: Device
let gauge: Gauge
let token: string
const inRoom = () => ({ roomId: full.roomId })

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  await makeRoomForReadings(world.contextOf(full.owner))
  const made = await world.ok(full.owner, 'createDevice', { params: inRoom(), body: { name: 'Rack' } })
  ;({ device, token } = made)
  gauge = await addGauge('t1')
})
afterAll(() => world.close())

const addGauge = (key: string, more: object = {}) =>
  world.ok(full.caretaker, 'createGauge', {
    params: { ...inRoom(), deviceId: device.id },
    body: { key, quantity: 'temperature', subjectId: full.larvalTank.id, low: 24, high: 28, ...more },
  })

type Sent = { type?: string; headers?: Record<string, string>; as?: string }
const post = (body: unknown, { type = 'application/json', headers, as = token }: Sent = {}) =>
  send(world, null, 'postReadings', {
    headers: { authorization: `Bearer ${as}`, ...headers },
    bytes: {
      type,
      data: Buffer.isBuffer(body) ? body : Buffer.from(typeof body === 'string' ? body : JSON.stringify(body)),
    },
  })
const kept = async (body: unknown, sent?: Sent) => {
  const { status, text, json } = await post(body, sent)
  expect(status, text).toBe(201)
  return PostedReadingsSchema.parse(json)
}
const series = async (of: Gauge, fromMinutes: number, points = 400) =>
  world.ok(full.viewer, 'getSeries', {
    params: { ...inRoom(), gaugeId: of.id },
    query: { from: minutesFrom(world, fromMinutes), to: minutesFrom(world, 1), points },
  })

describe('what a device posts', () => {
  test('is kept in each format, plain or gzipped, in the unit that is kept', async () => {
    const at = (minutes: number) => minutesFrom(world, -minutes)
    expect(await kept({ gauge: 't1', value: 25, at: at(5) })).toMatchObject({ kept: 1, refusedNumber: 0 })
    const pack = [{ n: 't1', u: 'Cel', v: 25.5, t: -240 }]
    expect(await kept(pack, { type: 'application/senml+json' })).toMatchObject({ kept: 1 })
    expect(await kept(`t1,${at(3)},78.8,F`, { type: 'text/csv; charset=utf-8' })).toMatchObject({ kept: 1 })
    const packed = gzipSync(JSON.stringify([{ gauge: 't1', value: 26.5, at: at(2) }]))
    expect(await kept(packed, { headers: { 'content-encoding': 'gzip' } })).toMatchObject({ kept: 1 })
    const { points } = await series(gauge, -6)
    expect(points.map(({ mean }) => Number(mean.toFixed(6)))).toEqual([25, 25.5, 26, 26.5])
  })

  test('is kept once for a gauge and time, and late ones in any order', async () => {
    const t2 = await addGauge('t2')
    const readings = [3, 1, 2, 1].map((minutes) => ({
      gauge: 't2',
      value: 20 + minutes,
      at: minutesFrom(world, -minutes),
    }))
    await kept(readings)
    await kept(readings)
    expect((await series(t2, -5)).points.map(({ mean }) => mean)).toEqual([23, 22, 21])
  })

  test('is refused by its place where it cannot be kept, and the rest is kept', async () => {
    await addGauge('ph', { quantity: 'ph', low: null, high: null })
    const answer = await kept([
      { gauge: 't1', value: 25, unit: 'pH' },
      { gauge: 'nobody', value: 25 },
      { gauge: 't1', value: 85 },
      { gauge: 'ph', value: 8.1 },
      { gauge: 't1', value: 25, at: minutesFrom(world, 366 * 1440) },
    ])
    expect(answer.kept).toBe(1)
    expect(answer.refusals.map(({ index, reason }) => [index, reason])).toEqual([
      [0, 'wrong_unit'],
      [1, 'unknown_gauge'],
      [2, 'beyond_sense'],
      [4, 'in_the_future'],
    ])
  })

  test('as a whole is refused in a sentence when it is none', async () => {
    const refusals = [
      await post('{"gauge":'),
      await post(''),
      await post(Buffer.from('no gzip'), { headers: { 'content-encoding': 'gzip' } }),
      await post([{ n: 't1', v: 1, must_: 1 }], { type: 'application/senml+json' }),
      await post(Array.from({ length: 20_001 }, () => ({ gauge: 't1', value: 1 }))),
    ]
    expect(refusals.map(({ problem }) => problem?.code)).toEqual(refusals.map(() => 'invalid_input'))
    expect((await post('x'.repeat(5_000_000))).problem?.code).toBe('too_large')
    const bomb = gzipSync(Buffer.alloc(20_000_000, ' '))
    expect((await post(bomb, { headers: { 'content-encoding': 'gzip' } })).problem?.code).toBe('too_large')
    expect((await post('<x/>', { type: 'application/xml' })).problem?.code).toBe('unsupported_media_type')
  })

  test('is of its own gauges: another device of the same room and a token that was revoked post nothing', async () => {
    const other = await world.ok(full.owner, 'createDevice', { params: inRoom(), body: { name: 'Shelf' } })
    expect((await kept({ gauge: 't1', value: 25 }, { as: other.token })).refusals).toMatchObject([
      { reason: 'unknown_gauge' },
    ])
    expect((await post({ gauge: 't1', value: 25 }, { as: 'a token that is none' })).status).toBe(401)
    await world.ok(full.owner, 'revokeDevice', { params: { ...inRoom(), deviceId: other.device.id }, body: {} })
    await expect.poll(async () => (await post({ gauge: 't1', value: 25 }, { as: other.token })).status).toBe(401)
  })

  test('its token opens nothing else, and the server keeps only its hash', async () => {
    const answer = await send(world, null, 'listDevices', {
      params: inRoom(),
      headers: { authorization: `Bearer ${token}` },
    })
    expect(answer.status).toBe(401)
    const rows = await world.database.pool.query(`SELECT row_to_json(device)::text AS row FROM device
      UNION ALL SELECT body::text FROM idempotency_key UNION ALL SELECT detail::text FROM audit_entry`)
    for (const { row } of rows.rows) expect(row).not.toContain(token)
  })

  test('shows on its page: seen, and what each gauge last read', async () => {
    const found = (await world.ok(full.viewer, 'listDevices', { params: inRoom() })).find(({ id }) => id === device.id)
    expect(found?.lastSeenAt).toBe(world.clock.now())
    expect(found?.gauges.find(({ key }) => key === 't1')?.latest).toEqual({ at: minutesFrom(world, -2), value: 26.5 })
  })

  test('is put right by an offset from its change on', async () => {
    const t3 = await addGauge('t3')
    await kept({ gauge: 't3', value: 25, at: minutesFrom(world, -2) })
    await world.ok(full.caretaker, 'changeGauge', {
      params: { ...inRoom(), gaugeId: t3.id },
      body: { offset: -0.4, version: t3.version },
    })
    await kept({ gauge: 't3', value: 25, at: minutesFrom(world, -1) })
    expect((await series(t3, -5)).points.map(({ mean }) => mean)).toEqual([25, 24.6])
  })
})

describe('a chart', () => {
  test('over weeks is made of hours, with extremes, gaps left out and late readings counted', async () => {
    const t4 = await addGauge('t4')
    const at = (hour: number, minute: number) =>
      `2026-02-2${hour < 24 ? 0 : 1}T${String(hour % 24).padStart(2, '0')}:${String(minute).padStart(2, '0')}:00Z`
    await kept([0, 10, 20].map((minute) => ({ gauge: 't4', value: 20 + minute / 10, at: at(3, minute) })))
    await kept([{ gauge: 't4', value: 30, at: at(30, 0) }])
    const asked = {
      params: { ...inRoom(), gaugeId: t4.id },
      query: { from: '2026-02-20T00:00:00Z', to: '2026-02-25T00:00:00Z' },
    }
    const before = await world.ok(full.viewer, 'getSeries', asked)
    expect(before.stepS).toBe(3600)
    expect(before.points).toEqual([
      { at: '2026-02-20T03:00:00.000Z', low: 20, high: 22, mean: 21, number: 3 },
      { at: '2026-02-21T06:00:00.000Z', low: 30, high: 30, mean: 30, number: 1 },
    ])
    await kept([{ gauge: 't4', value: 28, at: at(3, 30) }])
    expect((await world.ok(full.viewer, 'getSeries', asked)).points[0]).toMatchObject({
      high: 28,
      mean: 22.75,
      number: 4,
    })
  })

  test('of another room is not found, and a span the wrong way round is refused', async () => {
    const stranger = (await openRoom(world, { name: 'Next door' })).owner
    const asked = { from: minutesFrom(world, -5), to: world.clock.now() }
    const foreign = await world.call(stranger, 'getSeries', {
      params: { ...inRoom(), gaugeId: gauge.id },
      query: asked,
    })
    expect(foreign.status).toBe(404)
    const backwards = { from: asked.to, to: asked.from }
    const refused = await world.call(full.viewer, 'getSeries', {
      params: { ...inRoom(), gaugeId: gauge.id },
      query: backwards,
    })
    expect(refused.problem?.code).toBe('invalid_input')
  })
})

test('what happened in a vessel is marked on its charts: hatches, changes, alarms, and not what was struck or only topped up', async () => {
  const subjectId = full.larvalTank.id
  const record = (removedL: number, minutes: number) =>
    world.ok(full.standIn, 'recordFact', {
      params: inRoom(),
      body: {
        ...{ kind: 'water_change', subjectId, at: minutesFrom(world, minutes) },
        data: { removedL, addedL: 4, salinity: removedL === 0 ? 0 : 30 },
      },
    })
  await record(4, -20)
  await record(0, -15)
  const wrong = await record(3, -10)
  await world.ok(full.standIn, 'strikeFact', {
    params: { ...inRoom(), factId: wrong.id },
    body: { reason: 'another tank' },
  })
  const g = await addGauge('marks')
  await world.database.prisma.alarm.create({
    data: { ...inRoom(), id: g.id, gaugeId: g.id, kind: 'stuck', value: 25, raisedAt: minutesFrom(world, -5) },
  })
  const marks = (from: number) =>
    world.ok(full.viewer, 'listMarks', {
      params: { ...inRoom(), subjectId },
      query: { from: minutesFrom(world, from), to: world.clock.now() },
    })
  expect((await marks(-25)).map(({ kind, alarm }) => [kind, alarm])).toEqual([
    ['water_change', null],
    ['alarm', { kind: 'stuck', gaugeId: g.id }],
  ])
  expect((await marks(-4 * 1440)).filter(({ kind }) => kind === 'hatch').map(({ subject }) => subject.kind)).toEqual([
    'clutch',
  ])
  await world.database.prisma.alarm.deleteMany({ where: { gaugeId: g.id } })
})

describe('an alarm', () => {
  const look = () =>
    watchGauges({ database: world.database, actor: { kind: 'system', job: 'scheduler' }, now: world.clock.now() })
  const alarmsOf = async (of: Gauge) =>
    (await world.ok(full.viewer, 'listAlarms', { params: inRoom() })).filter((alarm) => alarm.gauge.id === of.id)

  test('is raised once when a heater sticks, acknowledged by one, and over when the water keeps to its band', async () => {
    const t5 = await addGauge('t5')
    const read = (value: number) => kept({ gauge: 't5', value })
    await read(26)
    for (const value of [28.2, 28.6, 29]) {
      world.clock.advanceMinutes(6)
      await read(value)
      await Promise.all([look(), look()])
    }
    const [raised, ...more] = await alarmsOf(t5)
    expect(more).toEqual([])
    expect(raised).toMatchObject({ kind: 'too_high', value: 29, acknowledgedAt: null, clearedAt: null })
    const params = { ...inRoom(), alarmId: raised?.id ?? '' }
    expect(await world.ok(full.standIn, 'acknowledgeAlarm', { params, body: {} })).toMatchObject({
      acknowledgedByName: full.standIn.name,
    })
    expect((await world.call(full.caretaker, 'acknowledgeAlarm', { params, body: {} })).problem?.code).toBe(
      'already_done',
    )
    for (const value of [27, 26.5, 26]) {
      world.clock.advanceMinutes(6)
      await read(value)
      await look()
    }
    expect(await alarmsOf(t5)).toMatchObject([{ id: raised?.id, clearedAt: world.clock.now() }])
  })

  test('is raised for a silence, and over when its gauge is taken out of use', async () => {
    const t6 = await addGauge('t6')
    world.clock.advanceMinutes(31)
    await look()
    await look()
    expect(await alarmsOf(t6)).toMatchObject([{ kind: 'silent', value: null, clearedAt: null }])
    await world.ok(full.caretaker, 'endGauge', { params: { ...inRoom(), gaugeId: t6.id }, body: {} })
    expect(await alarmsOf(t6)).toMatchObject([{ clearedAt: world.clock.now() }])
  })

  test('of a silence becomes one of heat when the gauge is back and too warm', async () => {
    const t7 = await addGauge('t7')
    world.clock.advanceMinutes(31)
    await look()
    await kept({ gauge: 't7', value: 29 })
    world.clock.advanceMinutes(10)
    await kept({ gauge: 't7', value: 29.2 })
    await look()
    const [hot, silent] = await alarmsOf(t7)
    expect(hot).toMatchObject({ kind: 'too_high', value: 29.2, clearedAt: null })
    expect(silent).toMatchObject({ kind: 'silent', clearedAt: world.clock.now() })
  })

  test('does not come of a value inside among those outside', async () => {
    const t8 = await addGauge('t8')
    for (const value of [29, 27, 29, 29]) {
      await kept({ gauge: 't8', value })
      world.clock.advanceMinutes(4)
    }
    await look()
    expect(await alarmsOf(t8)).toEqual([])
    world.clock.advanceMinutes(2)
    await look()
    expect(await alarmsOf(t8)).toMatchObject([{ kind: 'too_high' }])
  })
})

test('a gauge that is out of use leaves its name, and what it read', async () => {
  const before = await addGauge('again')
  await kept({ gauge: 'again', value: 25, at: minutesFrom(world, -2) })
  expect((await world.call(full.caretaker, 'createGauge', again())).problem?.code).toBe('invalid_input')
  await world.ok(full.caretaker, 'endGauge', { params: { ...inRoom(), gaugeId: before.id }, body: {} })
  expect((await kept({ gauge: 'again', value: 25 })).refusals).toMatchObject([{ reason: 'unknown_gauge' }])
  const after = await world.ok(full.caretaker, 'createGauge', again())
  await kept({ gauge: 'again', value: 26, at: minutesFrom(world, -1) })
  expect((await series(before, -5)).points.map(({ mean }) => mean)).toEqual([25])
  expect((await series(after, -5)).points.map(({ mean }) => mean)).toEqual([26])
})
const again = () => ({
  params: { ...inRoom(), deviceId: device.id },
  body: { key: 'again', quantity: 'temperature' as const, subjectId: full.larvalTank.id },
})
