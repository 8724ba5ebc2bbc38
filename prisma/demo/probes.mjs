// Three probes of the demo room, simulated and named so, with a month of what they read: the days' warmth, the luck of a
// sensor, and one night on which a heater stuck. All of it is invented.
import { randomBytes } from 'node:crypto'
import {
  addUpReadings,
  createDevice,
  createGauge,
  keepReadingsHere,
  makeRoomForReadings,
  postReadings,
} from '@fryward/room'

const dayMs = 86_400_000
const everyMs = 10 * 60_000
const days = 30
// The heater sticks for some hours, twelve nights ago.
const stuckDaysAgo = 12.3
const stuckHours = 5

const probes = [
  {
    key: 'l1-temperature',
    tank: 'L1',
    quantity: 'temperature',
    low: 24.5,
    high: 28.5,
    usual: 26.5,
    swing: 0.35,
    noise: 0.04,
  },
  {
    key: 'n1-temperature',
    tank: 'N1',
    quantity: 'temperature',
    low: 24,
    high: 28,
    usual: 26.2,
    swing: 0.3,
    noise: 0.04,
  },
  { key: 'l1-ph', tank: 'L1', quantity: 'ph', low: 7.8, high: 8.5, usual: 8.12, swing: 0.07, noise: 0.01 },
]

/** Lets the device in, hangs its gauges where the room has such a tank, and posts through the door that every device uses. */
export async function addProbes({ database, roomId, owner, random, nowMs }) {
  const now = new Date(nowMs).toISOString()
  const ctx = { database, actor: { kind: 'person', ...owner }, now }
  await makeRoomForReadings(ctx)
  const token = randomBytes(24).toString('base64url')
  const { device } = await createDevice({ ctx, roomId, input: { name: 'Rack probes (simulated)' }, token })
  const readings = []
  for (const probe of probes) {
    const tank = await database.prisma.subject.findFirst({
      where: { roomId, name: probe.tank, kind: 'tank', endedAt: null },
    })
    if (!tank) continue
    const { key, quantity, low, high } = probe
    // Nobody posts for it from now on; it is not to cry that it is silent.
    const limits = { offset: 0, low, high, forMinutes: 30, silentAfterMinutes: 7 * 24 * 60 }
    const input = { key, quantity, subjectId: tank.id, ...limits }
    await createGauge({ ctx, roomId, deviceId: device.id, input })
    for (let atMs = nowMs - days * dayMs; atMs <= nowMs; atMs += everyMs)
      readings.push({ gauge: key, at: new Date(atMs).toISOString(), value: valueAt(probe, { atMs, nowMs, random }) })
  }
  const actor = { kind: 'device', roomId, deviceId: device.id, name: device.name }
  const sent = { type: 'application/json', bytes: Buffer.from(JSON.stringify({ readings })) }
  if (readings.length > 0)
    await postReadings({ ctx: { ...ctx, actor }, keeper: keepReadingsHere(ctx.database), ...sent })
  await addUpReadings(ctx)
}

function valueAt({ quantity, usual, swing, noise }, { atMs, nowMs, random }) {
  const dayWave = swing * Math.sin((2 * Math.PI * atMs) / dayMs)
  const hoursStuck = ((atMs - nowMs) / dayMs + stuckDaysAgo) * 24
  const isWarmer = quantity === 'temperature' && hoursStuck > 0 && hoursStuck < 3 * stuckHours
  const heat = isWarmer
    ? 2.4 * Math.min(hoursStuck / stuckHours, Math.max(0, 1 - (hoursStuck - stuckHours) / (2 * stuckHours)))
    : 0
  return Number((usual + dayWave + heat + noise * random.normal()).toFixed(2))
}
