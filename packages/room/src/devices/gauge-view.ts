import { heldBy, oxygenHeld, type RoomSnapshot } from '@fryward/husbandry'
import { type Latest, readLatest } from '@fryward/readings'
import { type Gauge, type GaugeQuantity, type Id, type OxygenSaturation, unitOfGauge } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'

const withSubject = { subject: true } as const
type GaugeRow = Prisma.GaugeGetPayload<{ include: typeof withSubject }>

/** Gauges of the room as pages show them, with the newest reading of each. */
export async function viewGauges(
  { tx, ctx, roomId, state }: Scope,
  which: { deviceId?: Id; id?: Id },
): Promise<Gauge[]> {
  const rows = await tx.gauge.findMany({ where: { roomId, ...which }, include: withSubject, orderBy: { id: 'asc' } })
  const latest = await readLatest(
    ctx.database.pool,
    rows.map(({ channel }) => channel),
    new Date(Date.parse(ctx.now) - 31 * 86_400_000).toISOString(),
  )
  // Most rooms have none: nothing more is read for them.
  const snapshot = rows.some(readsOxygen) ? (await state()).snapshot : null
  return rows.map((row) => ({
    ...toGauge(row, latest.get(row.channel) ?? null),
    saturation: snapshot && saturationOf({ snapshot, row, rows, latest, now: ctx.now }),
  }))
}

export async function viewGauge(scope: Scope, id: Id): Promise<Gauge> {
  const [gauge] = await viewGauges(scope, { id })
  if (!gauge) throw notFound('gauge')
  return gauge
}

const readsOxygen = ({ quantity, endedAt }: GaugeRow): boolean => quantity === 'oxygen' && endedAt === null

type Found = {
  snapshot: RoomSnapshot
  row: GaugeRow
  rows: readonly GaugeRow[]
  latest: ReadonlyMap<number, Latest>
  now: string
}

/** What the water that a gauge of oxygen hangs in holds of it: by the gauges beside it, or what the records know of it then. */
function saturationOf(found: Found): OxygenSaturation | null {
  const { snapshot, row, latest, now } = found
  const vessel = [...snapshot.tanks, ...snapshot.cultures].find(({ id }) => id === row.subjectId)
  if (!readsOxygen(row) || !vessel) return null
  const at = latest.get(row.channel)?.at ?? now
  const held = oxygenHeld(snapshot, vessel, at)
  const beside = { temperature: readBeside(found, 'temperature', at), salinity: readBeside(found, 'salinity', at) }
  const water = {
    temperatureC: beside.temperature ?? held.temperatureC.value,
    salinity: beside.salinity ?? held.salinity.value,
  }
  const isRead = {
    temperature: beside.temperature !== null || held.temperatureC.read !== null,
    salinity: beside.salinity !== null || held.salinity.read !== null,
  }
  return { mgPerL: heldBy(water), ...water, isRead }
}

// What another gauge read of the same water. common practice
const besideMs = 3_600_000

function readBeside({ row, rows, latest }: Found, quantity: GaugeQuantity, at: string): number | null {
  const away = (read: Latest) => Math.abs(Date.parse(read.at) - Date.parse(at))
  const [nearest] = rows
    .filter((each) => each.subjectId === row.subjectId && each.quantity === quantity && each.endedAt === null)
    .flatMap(({ channel }) => latest.get(channel) ?? [])
    .filter((read) => away(read) <= besideMs)
    .sort((one, other) => away(one) - away(other))
  return nearest?.value ?? null
}

const toGauge = (row: GaugeRow, latest: { at: string; value: number } | null): Omit<Gauge, 'saturation'> => ({
  id: row.id,
  deviceId: row.deviceId,
  key: row.key,
  quantity: row.quantity,
  unit: unitOfGauge[row.quantity],
  subject: { id: row.subject.id, kind: row.subject.kind, name: row.subject.name },
  offset: row.offset,
  low: row.low,
  high: row.high,
  forMinutes: row.forMinutes,
  silentAfterMinutes: row.silentAfterMinutes,
  maxPerHour: row.maxPerHour,
  stuckAfterHours: row.stuckAfterHours,
  latest: latest && { at: latest.at, value: latest.value },
  endedAt: row.endedAt?.toISOString() ?? null,
  version: row.version,
})
