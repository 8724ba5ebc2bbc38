import type { Id, ReopenedThing } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { reopenLinks } from '../feed-links/reopen-links.ts'
import { assertNameIsFree } from '../frame/subject-row.ts'
import { assertFresh } from '../frame/versioned.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { assertWithinADay } from './within-a-day.ts'

/** Takes back the end of a tank, culture, pair, batch or group: it lives on as if it had not ended, with its feed links. */
export async function reopenThing({
  ctx,
  roomId,
  subjectId,
  input,
}: {
  ctx: Context
  roomId: Id
  subjectId: Id
  input: { version: number }
}): Promise<ReopenedThing> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const row = await work.tx.subject.findUnique({ where: { roomId_id: { roomId, id: subjectId } } })
    if (!row || row.kind === 'room') throw notFound('thing')
    if (!row.endedAt) throw new RoomError('wrong_state', `${row.name} has not ended; there is nothing to take back.`)
    assertFresh(row, input.version, row.name)
    assertWithinADay(ctx, row.endedAt, 'add it as a new one; what was recorded about the old one stays')
    if (row.kind === 'larval_batch') await assertHatched(work, row)
    return reopenSubject(work, row)
  })
}

/** The end of a subject undone; what it lives in must be in use, and its name must still be its own. */
export async function reopenSubject(
  work: Work,
  { id, kind, name }: Pick<ReopenedThing, 'id' | 'kind' | 'name'>,
): Promise<ReopenedThing> {
  const { tx, roomId } = work
  const key = { roomId_id: { roomId, id } }
  await assertNameIsFree(work, name, id)
  await assertHomeInUse(work, id, name)
  const { version } = await tx.subject.update({
    where: key,
    data: { endedAt: null, endReason: null, reopenedRevision: work.revision, version: { increment: 1 } },
  })
  if (kind === 'culture') await tx.culture.update({ where: key, data: { endCause: null } })
  await reopenLinks(work, { id, kind })
  work.audit({ action: `${kind}.reopen`, subjectId: id, why: `${name} was reopened` })
  return { id, kind, name, version }
}

async function assertHomeInUse({ tx, roomId }: Work, id: Id, name: string): Promise<void> {
  const query = {
    where: { roomId_id: { roomId, id } },
    select: { tank: { select: { subject: { select: { name: true, endedAt: true } } } } },
  } as const
  const home =
    (await tx.pair.findUnique(query)) ??
    (await tx.larvalBatch.findUnique(query)) ??
    (await tx.juvenileGroup.findUnique(query))
  const tank = home?.tank.subject
  if (tank?.endedAt)
    throw new RoomError('wrong_state', `${name} lived in ${tank.name}, which is out of use. Reopen ${tank.name} first.`)
}

/** A batch whose hatch was taken back never was; signing the hatch off again makes a new one. */
async function assertHatched({ tx, roomId }: Work, { id, name }: { id: Id; name: string }): Promise<void> {
  const hatches = await tx.fact.findMany({
    where: { roomId, kind: 'hatch', data: { path: ['batchId'], equals: id } },
    select: { struckAt: true },
  })
  if (hatches.length > 0 && hatches.every(({ struckAt }) => struckAt !== null))
    throw new RoomError('wrong_state', `The hatch that ${name} came from was taken back. Record the hatch again.`)
}
