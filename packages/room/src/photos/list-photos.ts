import type { Id, Photo } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toPhotos } from './photo-view.ts'

export async function listPhotos({
  ctx,
  roomId,
  subjectId,
}: {
  ctx: Context
  roomId: Id
  subjectId?: Id | undefined
}): Promise<Photo[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    toPhotos(
      tx,
      await tx.photo.findMany({
        where: { roomId, subjectId, struckAt: null },
        orderBy: [{ addedAt: 'desc' }, { id: 'desc' }],
        take: 200,
      }),
    ),
  )
}
