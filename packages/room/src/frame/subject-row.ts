import type { Id, SubjectKind } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import { invalid, notFound, RoomError } from '../errors.ts'
import type { Work } from './write-in-room.ts'

/** The row that facts and tasks point at; the thing's own table hangs on it. */
export async function insertSubject(
  work: Work,
  subject: { kind: SubjectKind; name: string; note?: string },
): Promise<Id> {
  await assertNameIsFree(work, subject.name)
  const id = uuidv7()
  await work.tx.subject.create({
    data: {
      roomId: work.roomId,
      id,
      kind: subject.kind,
      name: subject.name,
      note: subject.note ?? '',
      createdAt: work.ctx.now,
    },
  })
  return id
}

/** Two living things of one name would make a round ambiguous. */
export async function assertNameIsFree(work: Work, name: string, exceptId?: Id): Promise<void> {
  const taken = await work.tx.subject.findFirst({
    where: {
      roomId: work.roomId,
      endedAt: null,
      name: { equals: name, mode: 'insensitive' },
      id: exceptId ? { not: exceptId } : undefined,
    },
  })
  if (taken)
    throw invalid(
      'name',
      `"${name}" is the name of a ${taken.kind.replace('_', ' ')} here already; choose another.`,
      name,
    )
}

export async function changeSubject(
  work: Work,
  subject: { id: Id; name?: string | undefined; note?: string | undefined },
): Promise<void> {
  if (subject.name !== undefined) await assertNameIsFree(work, subject.name, subject.id)
  await work.tx.subject.update({
    where: { roomId_id: { roomId: work.roomId, id: subject.id } },
    data: { name: subject.name, note: subject.note, version: { increment: 1 } },
  })
}

type Ended = { id: Id; reason: string; how?: string; detail?: Record<string, unknown> }

/** Takes a thing out of use. Its facts stay; its open tasks are withdrawn when the lists are worked out again. */
export async function endSubject(work: Work, subject: Ended): Promise<void> {
  const row = await work.tx.subject.findUnique({ where: { roomId_id: { roomId: work.roomId, id: subject.id } } })
  if (!row) throw notFound('thing')
  if (row.endedAt) throw new RoomError('wrong_state', `${row.name} was ended already.`)
  await work.tx.subject.update({
    where: { roomId_id: { roomId: work.roomId, id: subject.id } },
    data: { endedAt: work.ctx.now, endReason: subject.reason, version: { increment: 1 } },
  })
  work.audit({
    action: `${row.kind}.end`,
    subjectId: row.id,
    detail: { reason: subject.reason, ...subject.detail },
    why: `${row.name} was ${subject.how ?? 'ended'}`,
  })
}
