import type { Device, Id } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'
import { viewGauges } from './gauge-view.ts'

export async function viewDevices(scope: Scope, which: { id?: Id } = {}): Promise<Device[]> {
  const { tx, roomId } = scope
  const rows = await tx.device.findMany({ where: { roomId, ...which }, orderBy: { id: 'asc' } })
  const gauges = await viewGauges(scope, which.id === undefined ? {} : { deviceId: which.id })
  return rows.map((row) => toDevice(row, gauges))
}

export async function viewDevice(scope: Scope, id: Id): Promise<Device> {
  const [device] = await viewDevices(scope, { id })
  if (!device) throw notFound('device')
  return device
}

const toDevice = (row: Prisma.DeviceGetPayload<object>, gauges: Device['gauges']): Device => ({
  id: row.id,
  name: row.name,
  topic: row.topic,
  createdAt: row.createdAt.toISOString(),
  lastSeenAt: row.lastSeenAt?.toISOString() ?? null,
  revokedAt: row.revokedAt?.toISOString() ?? null,
  gauges: gauges.filter(({ deviceId }) => deviceId === row.id),
  version: row.version,
})
