import type { ChangeGaugeSchema, Gauge, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { assertBand } from './band.ts'
import { viewGauge } from './gauge-view.ts'

export async function changeGauge({
  ctx,
  roomId,
  gaugeId,
  input,
}: {
  ctx: Context
  roomId: Id
  gaugeId: Id
  input: z.infer<typeof ChangeGaugeSchema>
}): Promise<Gauge> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage', changesDay: false },
    async (work) => {
      const before = await viewGauge(work, gaugeId)
      assertFresh(before, input.version, before.key)
      const { version: _version, ...fields } = input
      assertBand(before.quantity, { ...before, ...definedFields(fields) })
      await work.tx.gauge.update({
        where: { roomId_id: { roomId, id: gaugeId } },
        data: { ...definedFields(fields), version: { increment: 1 } },
      })
      work.audit({
        action: 'gauge.change',
        subjectId: before.subject.id,
        detail: { gaugeId, ...definedFields(fields) },
      })
    },
    (work) => viewGauge(work, gaugeId),
  ).finally(() => forgetGauges(ctx.database))
}
