import type { Photo, PhotoLook } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { nameOf, userNames } from '../people/user-names.ts'

export async function toPhotos(tx: Transaction, rows: readonly Prisma.PhotoGetPayload<object>[]): Promise<Photo[]> {
  const names = await userNames(
    tx,
    rows.map((row) => row.addedBy),
  )
  return rows.map(({ id, subjectId, factId, addedAt, addedBy, width, height, bytes, caption, shows }) => ({
    id,
    subjectId,
    factId,
    addedAt: addedAt.toISOString(),
    addedByName: nameOf(names, addedBy),
    width,
    height,
    bytes,
    caption,
    // Checked by its schema when it was marked.
    shows: shows as PhotoLook | null,
  }))
}
