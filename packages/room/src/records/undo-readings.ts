import { takeBack } from '@fryward/readings'
import type { Id } from '@fryward/shared'
import { z } from 'zod'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertWithinADay } from '../reopening/within-a-day.ts'

const KeptSchema = z.object({ at: z.array(z.number()) })

/** Takes back what an import of readings kept. */
export async function undoReadings({
  ctx,
  roomId,
  gaugeId,
  importId,
}: {
  ctx: Context
  roomId: Id
  gaugeId: Id
  importId: Id
}): Promise<{ struck: number }> {
  return writeInRoom({ ctx, roomId, permission: 'manage', changesDay: false }, async (work) => {
    const { tx } = work
    const gauge = await tx.gauge.findUnique({ where: { roomId_id: { roomId, id: gaugeId } } })
    const named = (action: string) =>
      tx.auditEntry.findFirst({ where: { roomId, action, detail: { path: ['importId'], equals: importId } } })
    const entry = await named('readings.import')
    if (!gauge || !entry) throw notFound('import')
    assertWithinADay(ctx, entry.at, 'leave it as it is')
    if (await named('readings.undo_import')) throw new RoomError('wrong_state', 'This import was taken back already.')
    const { at } = KeptSchema.parse(entry.detail)
    await takeBack(
      (statement, json) => tx.$executeRawUnsafe(statement, json),
      at.map((moment) => ({ channel: gauge.channel, at: moment })),
    )
    work.audit({ action: 'readings.undo_import', subjectId: gauge.subjectId, detail: { importId, gaugeId } })
    return { struck: at.length }
  })
}
