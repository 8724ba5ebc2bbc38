import type { HandOverNote, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { noteIncludes, toNotes } from './note-view.ts'

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
