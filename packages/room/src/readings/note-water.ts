import { type HourMean, quantities, readHourMeans } from '@fryward/readings'
import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { type NotedGauge, note } from './note.ts'
import { unbelieved } from './unbelieved.ts'
import { lookBackMs } from './worth-counting.ts'
import { isReadByRules, type Noted, worthNoting } from './worth-noting.ts'

type Gauge = NotedGauge & { roomId: Id; channel: number }
type Finding = { gauge: Gauge; noted: Noted[] }

/**
 * Writes what gauges read into the rooms' records, as means of hours: once a day, and sooner where it differs from what
 * the room knows, so that rules and forecasts read it and the days are planned anew. A gauge that is not believed is passed
 * over; what it read while it was not is never noted. Any number of processes may do so.
 * @returns how many records were written.
 */
export async function noteWater(ctx: Context): Promise<number> {
  const now = Date.parse(ctx.now)
  const gauges = (await findGauges(ctx)).filter(({ quantity }) => isReadByRules(quantity))
  if (gauges.length === 0) return 0
  const from = ({ notedUntil }: Gauge) => Math.max(notedUntil?.getTime() ?? 0, now - lookBackMs)
  const means = await readHourMeans(
    ctx.database.pool,
    gauges.map((gauge) => ({ channel: gauge.channel, from: from(gauge) })),
    now,
  )
  const findings = gauges.map((gauge) => ({ gauge, noted: notedOf(gauge, means.get(gauge.channel) ?? [], now) }))
  const worth = findings.filter(({ noted }) => noted.length > 0)
  let written = 0
  for (const roomId of new Set(worth.map(({ gauge }) => gauge.roomId)))
    written += await noteInRoom(
      ctx,
      roomId,
      worth.filter(({ gauge }) => gauge.roomId === roomId),
    )
  return written
}

function findGauges({ database }: Context): Promise<Gauge[]> {
  return database.prisma.gauge.findMany({
    where: {
      endedAt: null,
      device: { revokedAt: null },
      subject: { kind: { in: ['tank', 'culture'] }, endedAt: null },
      alarms: { none: { clearedAt: null, kind: { in: [...unbelieved] } } },
    },
  })
}

function notedOf({ quantity, notedUntil, notedValue }: Gauge, hours: HourMean[], now: number): Noted[] {
  const { low, high } = quantities[quantity].plausible
  const believed = hours.filter(({ mean }) => mean >= low && mean <= high)
  return worthNoting(quantity, { hours: believed, notedValue, notedUntil: notedUntil?.getTime() ?? null }, now)
}

function noteInRoom(ctx: Context, roomId: Id, findings: Finding[]): Promise<number> {
  return writeInRoom({ ctx, roomId, permission: 'record' }, async (work) => {
    let written = 0
    for (const { gauge, noted } of findings) written += (await note(work, gauge, noted)).length
    const number = written
    work.audit({ action: 'gauge.note', detail: { number }, why: 'a gauge read other water' })
    return written
  })
}
