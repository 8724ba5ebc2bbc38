import type { Id, NewPhotoQuerySchema, Photo } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { z } from 'zod'
import { actorUserId, type Context } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { nameOf, userNames } from '../people/user-names.ts'
import { personOf } from '../tasks/sign-off-task.ts'

/** An image that lies in the data folder already, named by its content. */
export type StoredImage = { sha256: string; width: number; height: number; bytes: number }

async function toPhotos(tx: Transaction, rows: readonly Prisma.PhotoGetPayload<object>[]): Promise<Photo[]> {
  const names = await userNames(
    tx,
    rows.map((row) => row.addedBy),
  )
  return rows.map(({ id, subjectId, factId, addedAt, addedBy, width, height, bytes, caption }) => ({
    id,
    subjectId,
    factId,
    addedAt: addedAt.toISOString(),
    addedByName: nameOf(names, addedBy),
    width,
    height,
    bytes,
    caption,
  }))
}

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
        orderBy: { addedAt: 'desc' },
        take: 200,
      }),
    ),
  )
}

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
