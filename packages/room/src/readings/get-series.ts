import { readSeries } from '@fryward/readings'
import type { GaugeSeries, Id, Instant } from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid, notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'

const mostYears = 20

export async function getSeries({
  ctx,
  roomId,
  gaugeId,
  query: { from, to, points },
}: {
  ctx: Context
  roomId: Id
  gaugeId: Id
  query: { from: Instant; to: Instant; points: number }
}): Promise<GaugeSeries> {
  const spanMs = Date.parse(to) - Date.parse(from)
  if (spanMs <= 0) throw invalid('to', 'The end comes after the beginning.', to)
  if (spanMs > mostYears * 366 * 86_400_000) throw invalid('from', `Ask for ${mostYears} years at most.`, from)
  const gauge = await readInRoom({ ctx, roomId }, ({ tx }) =>
    tx.gauge.findUnique({ where: { roomId_id: { roomId, id: gaugeId } }, select: { channel: true } }),
  )
  if (!gauge) throw notFound('gauge')
  return { gaugeId, from, to, ...(await readSeries(ctx.database.pool, { channel: gauge.channel, from, to, points })) }
}
