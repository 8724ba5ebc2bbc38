import type { Gauge, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { viewGauge } from './gauge-view.ts'

/** Takes a gauge out of use; what it read stays. */
export async function endGauge({ ctx, roomId, gaugeId }: { ctx: Context; roomId: Id; gaugeId: Id }): Promise<Gauge> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage', changesDay: false },
    async (work) => {
      const gauge = await viewGauge(work, gaugeId)
      if (gauge.endedAt) throw new RoomError('wrong_state', `${gauge.key} was taken out of use already.`)
      await work.tx.gauge.update({
        where: { roomId_id: { roomId, id: gaugeId } },
        data: { endedAt: ctx.now, version: { increment: 1 } },
      })
      await work.tx.alarm.updateMany({ where: { roomId, gaugeId, clearedAt: null }, data: { clearedAt: ctx.now } })
      work.audit({ action: 'gauge.end', subjectId: gauge.subject.id, detail: { gaugeId } })
    },
    (work) => viewGauge(work, gaugeId),
  ).finally(() => forgetGauges(ctx.database))
}
