import { randomUUID } from 'node:crypto'
import { keepReadingsHere, takeMessage } from '@fryward/room'
import { minutesFrom } from '../full-room.ts'
import { type RawRequest, send } from '../send.ts'
import { inRoom, type Requests, type Writing } from './writing.ts'

/** A device with one gauge in the larval tank, let in by the owner. */
async function deviceOf({ world, full }: Writing) {
  const { device, token } = await world.ok(full.owner, 'createDevice', {
    params: { roomId: full.roomId },
    body: { name: `Probe ${randomUUID().slice(0, 8)}` },
  })
  const gauge = await world.ok(full.owner, 'createGauge', {
    params: { roomId: full.roomId, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id, low: 24, high: 28 },
  })
  return { device, token, gauge }
}

const reading = (token: string): RawRequest => ({
  headers: { authorization: `Bearer ${token}` },
  bytes: { type: 'application/json', data: Buffer.from('[{"gauge":"t1","value":25.4},{"gauge":"t2","value":1}]') },
})

const ofFile = (writing: Writing, gauge: { id: string }) => ({
  params: inRoom(writing, { gaugeId: gauge.id }),
  body: { text: 'at,value\n2026-03-01 07:30,25.4\n' },
})

async function alarmOf(writing: Writing): Promise<{ id: string }> {
  const { world, full } = writing
  const { gauge } = await deviceOf(writing)
  const alarm = { roomId: full.roomId, id: randomUUID(), gaugeId: gauge.id, kind: 'too_high' as const, value: 29 }
  return world.database.prisma.alarm.create({ data: { ...alarm, raisedAt: world.clock.now() } })
}

export const deviceRequests = {
  listDevices: (writing) => ({ params: inRoom(writing) }),
  createDevice: (writing) => ({ params: inRoom(writing), body: { name: `Device ${writing.serial}` } }),
  changeDevice: async (writing) => {
    const { device } = await deviceOf(writing)
    const body = { topic: `home/${device.id}`, version: device.version }
    return { params: inRoom(writing, { deviceId: device.id }), body }
  },
  getBroker: async (writing) => {
    const { world, full } = writing
    const { device } = await deviceOf(writing)
    const topic = `home/${device.id}`
    const params = inRoom(writing, { deviceId: device.id })
    await world.ok(full.owner, 'changeDevice', { params, body: { topic, version: device.version } })
    const message = { topic, payload: Buffer.from('garbage'), isLate: false }
    const keeper = keepReadingsHere(world.database)
    await takeMessage({ ctx: world.contextOf(full.owner), keeper, roomId: full.roomId, message })
    return { params: inRoom(writing) }
  },
  changeBroker: (writing) => ({
    params: inRoom(writing),
    body: { url: 'mqtt://broker.example:1883', username: 'room', password: 'sea-salt', authority: null },
  }),
  revokeDevice: async (writing) => ({
    params: inRoom(writing, { deviceId: (await deviceOf(writing)).device.id }),
    body: {},
  }),
  createGauge: async (writing) => ({
    params: inRoom(writing, { deviceId: (await deviceOf(writing)).device.id }),
    body: { key: 'ph-1', quantity: 'ph', subjectId: writing.full.larvalTank.id },
  }),
  changeGauge: async (writing) => {
    const { gauge } = await deviceOf(writing)
    return { params: inRoom(writing, { gaugeId: gauge.id }), body: { high: 27, version: gauge.version } }
  },
  endGauge: async (writing) => ({
    params: inRoom(writing, { gaugeId: (await deviceOf(writing)).gauge.id }),
    body: {},
  }),
  previewReadings: async (writing) => ofFile(writing, (await deviceOf(writing)).gauge),
  importReadings: async (writing) => ofFile(writing, (await deviceOf(writing)).gauge),
  undoReadings: async (writing) => {
    const { world, full } = writing
    const request = ofFile(writing, (await deviceOf(writing)).gauge)
    const made = await world.ok(full.owner, 'importReadings', request)
    return { params: { ...request.params, importId: made.id }, body: {} }
  },
  getSeries: async (writing) => {
    const { gauge, token } = await deviceOf(writing)
    await send(writing.world, null, 'postReadings', reading(token))
    return {
      params: inRoom(writing, { gaugeId: gauge.id }),
      query: { from: minutesFrom(writing.world, -60), to: minutesFrom(writing.world, 1) },
    }
  },
  listMarks: async (writing) => {
    await alarmOf(writing)
    return {
      params: inRoom(writing, { subjectId: writing.full.larvalTank.id }),
      query: { from: minutesFrom(writing.world, -60), to: minutesFrom(writing.world, 1) },
    }
  },
  listAlarms: (writing) => ({ params: inRoom(writing) }),
  acknowledgeAlarm: async (writing) => ({
    params: inRoom(writing, { alarmId: (await alarmOf(writing)).id }),
    body: {},
  }),
  quietAlarm: async (writing) => ({
    params: inRoom(writing, { alarmId: (await alarmOf(writing)).id }),
    body: { minutes: 60 },
  }),
  handAlarm: async (writing) => ({
    params: inRoom(writing, { alarmId: (await alarmOf(writing)).id }),
    body: { userId: writing.full.caretaker.userId },
  }),
  postReadings: async (writing) => reading((await deviceOf(writing)).token),
} satisfies Requests
