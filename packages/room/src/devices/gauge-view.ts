import { readLatest } from '@fryward/readings'
import { type Gauge, type Id, unitOfGauge } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'

const withSubject = { subject: true } as const
type GaugeRow = Prisma.GaugeGetPayload<{ include: typeof withSubject }>

type Scope = { tx: Transaction; ctx: Context; roomId: Id }

/** Gauges of the room as pages show them, with the newest reading of each. */
export async function viewGauges({ tx, ctx, roomId }: Scope, which: { deviceId?: Id; id?: Id }): Promise<Gauge[]> {
  const rows = await tx.gauge.findMany({ where: { roomId, ...which }, include: withSubject, orderBy: { id: 'asc' } })
  const latest = await readLatest(
    ctx.database.pool,
    rows.map(({ channel }) => channel),
    new Date(Date.parse(ctx.now) - 31 * 86_400_000).toISOString(),
  )
  return rows.map((row) => toGauge(row, latest.get(row.channel) ?? null))
}

export async function viewGauge(scope: Scope, id: Id): Promise<Gauge> {
  const [gauge] = await viewGauges(scope, { id })
  if (!gauge) throw notFound('gauge')
  return gauge
}

const toGauge = (row: GaugeRow, latest: { at: string; value: number } | null): Gauge => ({
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
