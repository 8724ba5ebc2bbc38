import { type Id, IdSchema } from '@fryward/shared'
import { z } from 'zod'
import { actorUserId, type Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertWithinADay } from '../reopening/within-a-day.ts'

const KeptSchema = z.object({ factIds: z.array(IdSchema) })

/** Strikes out what an import kept, but for what somebody has struck out since. */
export async function undoImport({
  ctx,
  roomId,
  importId,
}: {
  ctx: Context
  roomId: Id
  importId: Id
}): Promise<{ struck: number }> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const { tx, revision } = work
    const entry = await tx.auditEntry.findFirst({
      where: { roomId, action: 'counts.import', detail: { path: ['importId'], equals: importId } },
    })
    if (!entry) throw notFound('import')
    assertWithinADay(ctx, entry.at, 'strike out what is wrong on the page of its thing')
    const { factIds } = KeptSchema.parse(entry.detail)
    const { count } = await tx.fact.updateMany({
      where: { roomId, id: { in: factIds }, struckAt: null },
      data: {
        ...{ struckAt: ctx.now, struckBy: actorUserId(ctx.actor), struckRevision: revision },
        struckReason: 'The import was taken back.',
      },
    })
    if (count === 0) throw new RoomError('wrong_state', 'Nothing of this import stands any more.')
    work.audit({
      action: 'counts.undo_import',
      subjectId: roomId,
      detail: { importId, count },
      why: 'an import was taken back',
    })
    return { struck: count }
  })
}
