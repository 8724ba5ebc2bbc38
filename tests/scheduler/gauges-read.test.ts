import { makeRoomForReadings } from '@fryward/room'
import type { Gauge } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { send } from '../api/send.ts'
import { openWorld, type World } from '../support/world.ts'
import { tickNow } from './room-clock.ts'

let world: World
let full: FullRoom
let gauge: Gauge
let token: string
const inRoom = () => ({ roomId: full.roomId })

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  await makeRoomForReadings(world.contextOf(full.owner))
})
afterAll(() => world.close())
beforeEach(async () => {
  const made = await world.ok(full.owner, 'createDevice', {
    params: inRoom(),
    body: { name: `Rack ${world.clock.now()}` },
  })
  token = made.token
  gauge = await addGauge(made.device.id, { key: 't1', quantity: 'temperature' })
})

const addGauge = (deviceId: string, body: { key: string; quantity: Gauge['quantity']; maxPerHour?: number }) =>
  world.ok(full.owner, 'createGauge', {
    params: { ...inRoom(), deviceId },
    body: { low: null, high: null, silentAfterMinutes: 90, subjectId: full.pairTank.id, ...body },
  })

async function post(...readings: { gauge: string; value: number; at?: string }[]): Promise<void> {
  const { status, text } = await send(world, null, 'postReadings', {
    headers: { authorization: `Bearer ${token}` },
    bytes: { type: 'application/json', data: Buffer.from(JSON.stringify(readings)) },
  })
  expect(status, text).toBe(201)
}

/** Hours go by, each with six readings of a gauge, and the scheduler looks at the end of each. */
async function hoursOf(key: string, values: number[], of: (index: number) => number = () => 0): Promise<void> {
  for (const value of values) {
    for (let index = 0; index < 6; index += 1) {
      world.clock.advanceMinutes(10)
      await post({ gauge: key, value: value + of(index) })
    }
    await tickNow(world)
  }
}

const wobble = (index: number) => (index % 2) / 10
const records = async () =>
  (await world.ok(full.viewer, 'listFacts', { params: inRoom(), query: { kind: 'water_reading' } })).facts
const nights = async () => {
  const clutch = (await world.ok(full.viewer, 'listClutches', { params: inRoom() })).find(
    ({ id }) => id === full.clutch.id,
  )
  return clutch?.nights ?? []
}
const standing = async () =>
  (await world.ok(full.viewer, 'listAlarms', { params: inRoom() })).filter(
    (alarm) => alarm.gauge.id === gauge.id && alarm.clearedAt === null,
  )
const meanNight = (list: { date: string; probability: number }[]) =>
  list.reduce((sum, { date, probability }) => sum + Date.parse(date) * probability, 0) /
  list.reduce((sum, { probability }) => sum + probability, 0)

describe('what a gauge reads', () => {
  test('is written into the records when it differs, and a heater that sticks brings the hatch nights forward', async () => {
    const before = await nights()
    await hoursOf('t1', [27, 27, 27], wobble)
    const calm = await records()
    expect(calm).toMatchObject([{ subjectId: full.pairTank.id, data: { gaugeKey: 't1', temperatureC: 27.05 } }])
    await hoursOf('t1', [28.5, 30, 31, 31, 31, 31, 31, 31], wobble)
    expect((await records()).length).toBeGreaterThan(calm.length)
    await hoursOf('t1', Array(16).fill(31), wobble)
    expect(meanNight(await nights())).toBeLessThan(meanNight(before) - 3_600_000)
  })

  test('is not believed while it is stuck, says so, and nothing of that time is ever noted', async () => {
    await hoursOf('t1', Array(26).fill(26))
    expect(await standing()).toMatchObject([{ kind: 'stuck', value: 26 }])
    const before = (await records()).length
    await hoursOf('t1', [26, 26], wobble)
    expect(await standing()).toEqual([])
    expect((await records()).length).toBe(before)
    await hoursOf('t1', [29, 29], wobble)
    const [newest] = await records()
    expect(newest).toMatchObject({ data: { temperatureC: 29.05 } })
  })

  test('is not believed when no water can be so, and one that sends only nonsense is not called silent', async () => {
    await hoursOf('t1', [42, 43], wobble)
    expect(await standing()).toMatchObject([{ kind: 'implausible' }])
    const before = (await records()).length
    await hoursOf('t1', [85, 85], wobble)
    expect(await standing()).toMatchObject([{ kind: 'implausible', value: expect.any(Number) }])
    expect((await records()).length).toBe(before)
  })

  test('of oxygen is a share of what its water holds, and too small a one is a task that names gauge and time', async () => {
    await addGauge(gauge.deviceId, { key: 'o2', quantity: 'oxygen' })
    await hoursOf('t1', [20, 20], wobble)
    await hoursOf('o2', [5, 5], wobble)
    const saturation = async () =>
      (await world.ok(full.viewer, 'listDevices', { params: inRoom() }))
        .flatMap(({ gauges }) => gauges)
        .find(({ key }) => key === 'o2')?.saturation
    const held = await saturation()
    // Standard Methods, Table 4500-O:I: 7.749 mg/L at 20 C and chlorinity 15, 7.346 at 20.
    expect(held).toMatchObject({ temperatureC: 20.05, isRead: { temperature: true } })
    expect(held?.mgPerL).toBeGreaterThan(7.34)
    expect(held?.mgPerL).toBeLessThan(7.75)
    await post({ gauge: 't1', value: 30 })
    expect((await saturation())?.temperatureC).toBe(30)
    const { tasks } = await world.ok(full.viewer, 'getDay', { params: { ...inRoom(), date: 'today' } })
    const low = tasks.find(({ ruleId }) => ruleId === 'tank-oxygen')
    const why = await world.ok(full.viewer, 'getTaskWhy', { params: { ...inRoom(), taskId: low?.id ?? '' } })
    expect(why.because[0]).toMatchObject({
      ...{ label: 'oxygen read by gauge o2', quantity: { value: 5.05, unit: 'mg_per_L' } },
      origin: { kind: 'fact', at: expect.stringMatching(/:00:00.000Z$/) },
    })
  })

  test('is told of when it changes faster than it may', async () => {
    await world.ok(full.owner, 'changeGauge', {
      params: { ...inRoom(), gaugeId: gauge.id },
      body: { maxPerHour: 1, version: gauge.version },
    })
    await hoursOf('t1', [27], (index) => -0.4 * index)
    const [alarm] = await standing()
    expect(alarm?.kind).toBe('too_fast')
    expect(alarm?.value).toBeCloseTo(-2)
    await hoursOf('t1', [25, 25], wobble)
    expect(await standing()).toEqual([])
  })
})
