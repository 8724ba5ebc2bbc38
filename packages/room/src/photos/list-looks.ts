import type { Id, Photo } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toPhotos } from './photo-view.ts'

/** Photos that an owner marked as what something looks like here. */
export async function listLooks({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Photo[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    toPhotos(
      tx,
      await tx.photo.findMany({
        where: { roomId, shows: { not: null }, struckAt: null },
        orderBy: [{ addedAt: 'desc' }, { id: 'desc' }],
        take: 100,
      }),
    ),
  )
}
