import type { HandOverNote, Id, NewHandOverNoteSchema } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { nameOf, userNames } from '../people/user-names.ts'
import { personOf } from '../tasks/sign-off-task.ts'

export const noteIncludes = { subject: { select: { id: true, kind: true, name: true } } } as const
type NoteRow = Prisma.NoteGetPayload<{ include: typeof noteIncludes }>

export async function toNotes(tx: Transaction, rows: readonly NoteRow[]): Promise<HandOverNote[]> {
  const names = await userNames(
    tx,
    rows.flatMap((row) => [row.writtenBy, ...(row.settledBy ? [row.settledBy] : [])]),
  )
  return rows.map((row) => ({
    id: row.id,
    at: row.at.toISOString(),
    byName: nameOf(names, row.writtenBy),
    text: row.text,
    isWorry: row.isWorry,
    subject: row.subject,
    settledAt: row.settledAt?.toISOString() ?? null,
    settledByName: row.settledBy ? nameOf(names, row.settledBy) : null,
  }))
}

/** A note for whoever comes next; a worry stays open until it is settled. */
export async function writeNote({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: z.infer<typeof NewHandOverNoteSchema>
}): Promise<HandOverNote> {
  return writeInRoom({ ctx, roomId, permission: 'record', changesDay: false }, async (work) => {
    const { text, isWorry, subjectId } = input
    if (subjectId && !(await work.tx.subject.findUnique({ where: { roomId_id: { roomId, id: subjectId } } })))
      throw invalid('subjectId', 'There is no such thing in this room.', subjectId)
    const row = await work.tx.note.create({
      data: {
        roomId,
        id: uuidv7(),
        at: ctx.now,
        writtenBy: personOf(ctx.actor),
        text,
        isWorry,
        subjectId: subjectId ?? null,
        revision: work.revision,
      },
      include: noteIncludes,
    })
    work.audit({ action: 'note.write', subjectId: subjectId ?? null, detail: { noteId: row.id, isWorry } })
    return (await toNotes(work.tx, [row]))[0]!
  })
}

export async function settleWorry({
  ctx,
  roomId,
  noteId,
}: {
  ctx: Context
  roomId: Id
  noteId: Id
}): Promise<HandOverNote> {
  return writeInRoom({ ctx, roomId, permission: 'record', changesDay: false }, async (work) => {
    const key = { roomId_id: { roomId, id: noteId } }
    const before = await work.tx.note.findUnique({ where: key, include: noteIncludes })
    if (!before) throw notFound('note')
    if (!before.isWorry || before.settledAt)
      throw new RoomError('wrong_state', 'This is no open worry.', { current: (await toNotes(work.tx, [before]))[0] })
    const row = await work.tx.note.update({
      where: key,
      data: { settledAt: ctx.now, settledBy: personOf(ctx.actor) },
      include: noteIncludes,
    })
    work.audit({ action: 'note.settle', subjectId: row.subjectId, detail: { noteId } })
    return (await toNotes(work.tx, [row]))[0]!
  })
}
