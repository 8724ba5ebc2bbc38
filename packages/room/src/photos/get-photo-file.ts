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
    // One that was taken off its record is gone from its address too.
    const row = await tx.photo.findFirst({ where: { roomId, id: photoId, struckAt: null }, select: { sha256: true } })
    if (!row) throw notFound('photo')
    return row
  })
}
