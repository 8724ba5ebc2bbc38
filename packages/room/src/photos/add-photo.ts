import type { Id, NewPhotoQuerySchema, Photo } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { toPhotos } from './photo-view.ts'

/** An image that lies in the data folder already, named by its content. */
export type StoredImage = { sha256: string; width: number; height: number; bytes: number }

/**
 * Puts a photo on a record or on a thing. `store` writes the files; it runs before the row is written, so a row never
 * names a file that is not there (a file without a row is only waste, and is named by its content).
 */
export async function addPhoto({
  ctx,
  roomId,
  input,
  store,
}: {
  ctx: Context
  roomId: Id
  input: z.infer<typeof NewPhotoQuerySchema>
  store: () => Promise<StoredImage>
}): Promise<Photo> {
  await readInRoom({ ctx, roomId, permission: 'record' }, async () => undefined)
  const image = await store()
  return writeInRoom({ ctx, roomId, permission: 'record', changesDay: false }, async (work) => {
    const { subjectId, factId, caption } = input
    if (!(await work.tx.subject.findUnique({ where: { roomId_id: { roomId, id: subjectId } } })))
      throw invalid('subjectId', 'There is no such thing in this room.', subjectId)
    if (factId && !(await work.tx.fact.findFirst({ where: { roomId, id: factId, subjectId } })))
      throw invalid('factId', 'There is no such record about this.', factId)
    const row = await work.tx.photo.create({
      data: {
        roomId,
        id: uuidv7(),
        subjectId,
        factId: factId ?? null,
        addedAt: ctx.now,
        addedBy: personOf(ctx.actor),
        caption,
        ...image,
      },
    })
    work.audit({ action: 'photo.add', subjectId, detail: { photoId: row.id, factId: factId ?? null } })
    return (await toPhotos(work.tx, [row]))[0]!
  })
}
