import type { Fact, Id } from '@fryward/shared'
import { actorUserId, type Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { takeBackBatches } from '../hatches/take-back-batches.ts'
import { getFactInRoom } from './get-fact.ts'

/** Strikes out a mistake. The fact stays readable; everything worked out from it is as if it had not been written. */
export async function strikeFact({
  ctx,
  roomId,
  factId,
  reason,
}: {
  ctx: Context
  roomId: Id
  factId: Id
  reason: string
}): Promise<Fact> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const row = await work.tx.fact.findUnique({ where: { roomId_id: { roomId, id: factId } } })
      if (!row) throw notFound('fact')
      if (row.struckAt)
        throw new RoomError('wrong_state', 'This record is struck out already.', {
          current: await getFactInRoom(work, factId),
        })
      if (work.role === 'stand_in' && row.recordedBy !== actorUserId(ctx.actor))
        throw new RoomError(
          'not_allowed',
          'A stand-in strikes out their own records; leave a note for a caretaker about this one.',
        )
      await work.tx.fact.update({
        where: { roomId_id: { roomId, id: factId } },
        data: {
          struckAt: ctx.now,
          struckBy: actorUserId(ctx.actor),
          struckReason: reason,
          struckRevision: work.revision,
        },
      })
      if (row.kind === 'hatch') await takeBackBatches(work, [row], 'The hatch was struck out.')
      // Who saw the clutch as it was decided on must not change it unseen.
      if (row.kind === 'decision') await changeSubject(work, { id: row.subjectId })
      work.audit({
        action: 'fact.strike',
        subjectId: row.subjectId,
        detail: { factId, kind: row.kind, reason },
        why: `a ${row.kind.replaceAll('_', ' ')} was struck out`,
      })
    },
    (work) => getFactInRoom(work, factId),
  )
}
