import type { Gauge, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { viewGauge } from '../devices/gauge-view.ts'
import { invalid, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { assertWithinADay } from './within-a-day.ts'

/** Puts a gauge back into use under its own name, with its readings and limits. */
export async function restoreGauge({
  ctx,
  roomId,
  gaugeId,
}: {
  ctx: Context
  roomId: Id
  gaugeId: Id
}): Promise<Gauge> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage', changesDay: false },
    async (work) => {
      const gauge = await viewGauge(work, gaugeId)
      if (!gauge.endedAt) throw new RoomError('wrong_state', `${gauge.key} is in use; there is nothing to put back.`)
      assertWithinADay(ctx, new Date(gauge.endedAt), 'add it to its device as a new one; what it read stays')
      const key = { roomId, deviceId: gauge.deviceId, key: gauge.key, endedAt: null }
      if ((await work.tx.gauge.count({ where: key })) > 0)
        throw invalid(
          'key',
          `Its device has another gauge "${gauge.key}" by now; take that one out of use first.`,
          gauge.key,
        )
      await work.tx.gauge.update({
        where: { roomId_id: { roomId, id: gaugeId } },
        data: { endedAt: null, version: { increment: 1 } },
      })
      work.audit({ action: 'gauge.restore', subjectId: gauge.subject.id, detail: { gaugeId } })
    },
    (work) => viewGauge(work, gaugeId),
  ).finally(() => forgetGauges(ctx.database))
}
