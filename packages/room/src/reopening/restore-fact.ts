import type { Fact, Id } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { actorUserId, type Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { assertBookHolds } from '../facts/book.ts'
import { getFactInRoom } from '../facts/get-fact.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { batchesOf } from '../hatches/take-back-batches.ts'
import { reopenSubject } from './reopen-thing.ts'
import { assertWithinADay } from './within-a-day.ts'

type Row = Prisma.FactGetPayload<{ include: { signOff: true } }>

/**
 * Enters what was struck out again as it was: a record is never edited, so the struck one stays and another stands beside
 * it, of the same moment and by the same person, with its photos. What went with the strike comes back.
 * @throws RoomError `wrong_state` where it stands, was put back already, or its sign-off was taken back as a whole.
 */
export async function restoreFact({ ctx, roomId, factId }: { ctx: Context; roomId: Id; factId: Id }): Promise<Fact> {
  return writeInRoom({ ctx, roomId, permission: 'record' }, (work) => enterAgain(work, factId), getFactInRoom)
}

async function enterAgain(work: Work, factId: Id): Promise<Id> {
  const { tx, roomId, ctx } = work
  const row = await tx.fact.findUnique({ where: { roomId_id: { roomId, id: factId } }, include: { signOff: true } })
  if (!row) throw notFound('fact')
  await assertMayRestore(work, row)
  const { signOff: _signOff, struckAt: _at, struckBy: _by, struckReason: _why, struckRevision: _as, ...fact } = row
  await assertBookHolds(work, fact)
  const id = uuidv7()
  await tx.fact.create({
    data: { ...fact, id, receivedAt: ctx.now, revision: work.revision, data: fact.data as Prisma.InputJsonObject },
  })
  await tx.photo.updateMany({ where: { roomId, factId }, data: { factId: id } })
  if (row.kind === 'decision') await changeSubject(work, { id: row.subjectId })
  if (row.kind === 'hatch') await bringBackBatches(work, row)
  work.audit({
    action: 'fact.restore',
    subjectId: row.subjectId,
    detail: { factId, kind: row.kind, enteredAs: id },
    why: `a ${row.kind.replaceAll('_', ' ')} was put back`,
  })
  return id
}

async function assertMayRestore(work: Work, { id, struckAt, recordedBy, signOff }: Row): Promise<void> {
  const { tx, roomId, ctx, role } = work
  if (!struckAt) throw new RoomError('wrong_state', 'This record is not struck out; there is nothing to put back.')
  if (role === 'stand_in' && recordedBy !== actorUserId(ctx.actor))
    throw new RoomError('not_allowed', 'A stand-in puts back their own records; ask a caretaker about this one.')
  if (signOff?.undoneAt)
    throw new RoomError(
      'wrong_state',
      'Its sign-off was taken back as a whole. Sign the task off again, or record it again.',
    )
  assertWithinADay(ctx, struckAt, 'record it again, with the time at which it was done')
  const before = await tx.auditEntry.findFirst({
    where: { roomId, action: 'fact.restore', detail: { path: ['factId'], equals: id } },
  })
  if (before) throw new RoomError('wrong_state', 'This record was put back already; it stands beside this one.')
}

/** A batch that ended because its hatch was struck out lives again with it; one that was ended otherwise stays so. */
async function bringBackBatches(work: Work, hatch: Row): Promise<void> {
  const { tx, roomId } = work
  for (const batchId of batchesOf([hatch])) {
    const batch = await tx.subject.findUnique({ where: { roomId_id: { roomId, id: batchId } } })
    if (!batch?.endedAt) continue
    const end = await tx.auditEntry.findFirst({
      where: { roomId, subjectId: batchId, action: 'larval_batch.end' },
      orderBy: [{ revision: 'desc' }, { ordinal: 'desc' }],
    })
    const detail = end?.detail as { withItsHatch?: unknown } | undefined
    if (detail?.withItsHatch === true) await reopenSubject(work, batch)
  }
}
