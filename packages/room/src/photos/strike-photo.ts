import type { Id } from '@fryward/shared'
import { actorUserId, type Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'

/** Takes a photo off its record; the file stays for the record's history. */
export async function strikePhoto({
  ctx,
  roomId,
  photoId,
}: {
  ctx: Context
  roomId: Id
  photoId: Id
}): Promise<{ ok: true }> {
  return writeInRoom({ ctx, roomId, permission: 'record', changesDay: false }, async (work) => {
    const key = { roomId_id: { roomId, id: photoId } }
    const row = await work.tx.photo.findUnique({ where: key })
    if (!row || row.struckAt) throw notFound('photo')
    if (work.role === 'stand_in' && row.addedBy !== actorUserId(ctx.actor))
      throw new RoomError('not_allowed', 'A stand-in takes back their own photos; ask a caretaker about this one.')
    await work.tx.photo.update({ where: key, data: { struckAt: ctx.now } })
    work.audit({ action: 'photo.strike', subjectId: row.subjectId, detail: { photoId } })
    return { ok: true }
  })
}
