import { takeBack } from '@fryward/readings'
import { type Id, IdSchema, InstantSchema } from '@fryward/shared'
import { z } from 'zod'
import { actorUserId, type Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { assertWithinADay } from '../reopening/within-a-day.ts'

const KeptSchema = z.object({
  at: z.array(z.number()),
  // Imports of before noted nothing.
  factIds: z.array(IdSchema).default([]),
  notedBefore: z
    .object({ until: z.nullable(InstantSchema), value: z.nullable(z.number()) })
    .default({ until: null, value: null }),
  notedUntil: z.nullable(InstantSchema).default(null),
})
type Kept = z.infer<typeof KeptSchema>

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
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const { tx } = work
    const gauge = await tx.gauge.findUnique({ where: { roomId_id: { roomId, id: gaugeId } } })
    const named = (action: string) =>
      tx.auditEntry.findFirst({ where: { roomId, action, detail: { path: ['importId'], equals: importId } } })
    const entry = await named('readings.import')
    if (!gauge || !entry) throw notFound('import')
    assertWithinADay(ctx, entry.at, 'leave it as it is')
    if (await named('readings.undo_import')) throw new RoomError('wrong_state', 'This import was taken back already.')
    const kept = KeptSchema.parse(entry.detail)
    if (kept.factIds.length > 0) await unnote(work, gaugeId, kept)
    await takeBack(
      (statement, json) => tx.$executeRawUnsafe(statement, json),
      kept.at.map((moment) => ({ channel: gauge.channel, at: moment })),
    )
    work.audit({
      action: 'readings.undo_import',
      subjectId: gauge.subjectId,
      detail: { importId, gaugeId },
      why: 'an import was taken back',
    })
    return { struck: kept.at.length }
  })
}

/** Strikes out what was noted of them; where nothing was noted since, the gauge's other readings are looked at again. */
async function unnote(
  { tx, ctx, roomId, revision }: Work,
  gaugeId: Id,
  { factIds, notedBefore, notedUntil }: Kept,
): Promise<void> {
  await tx.fact.updateMany({
    where: { roomId, id: { in: factIds }, struckAt: null },
    data: {
      ...{ struckAt: ctx.now, struckBy: actorUserId(ctx.actor), struckRevision: revision },
      struckReason: 'The import was taken back.',
    },
  })
  await tx.gauge.updateMany({
    where: { roomId, id: gaugeId, notedUntil },
    data: { notedUntil: notedBefore.until, notedValue: notedBefore.value },
  })
}
