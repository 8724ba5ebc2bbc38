import type { Id, Photo, PhotoLook } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { toPhotos } from './photo-view.ts'

/** Says what a photo shows, or with null that it is a photo like any other. */
export async function markPhoto({
  ctx,
  roomId,
  photoId,
  shows,
}: {
  ctx: Context
  roomId: Id
  photoId: Id
  shows: PhotoLook | null
}): Promise<Photo> {
  return writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const key = { roomId_id: { roomId, id: photoId } }
    const row = await work.tx.photo.findUnique({ where: key })
    if (!row || row.struckAt) throw notFound('photo')
    const marked = await work.tx.photo.update({ where: key, data: { shows } })
    work.audit({ action: 'photo.mark', subjectId: row.subjectId, detail: { photoId, shows } })
    return (await toPhotos(work.tx, [marked]))[0]!
  })
}
