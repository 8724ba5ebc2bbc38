import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'

/** The content name of a photo's files, for people of its room. */
export async function getPhotoFile({
  ctx,
  roomId,
  photoId,
}: {
  ctx: Context
  roomId: Id
  photoId: Id
}): Promise<{ sha256: string }> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const row = await tx.photo.findUnique({ where: { roomId_id: { roomId, id: photoId } }, select: { sha256: true } })
    if (!row) throw notFound('photo')
    return row
  })
}
