import type { HandOverNote, Id, NewHandOverNoteSchema } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { noteIncludes, toNotes } from './note-view.ts'

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
