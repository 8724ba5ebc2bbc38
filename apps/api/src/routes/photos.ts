import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { addPhoto, getPhotoFile, RoomError } from '@fryward/room'
import {
  IdSchema,
  maximumPhotoBytes,
  NewPhotoQuerySchema,
  photoFilePath,
  photoSizes,
  photosPath,
  photoTypes,
} from '@fryward/shared'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import type { PhotoStore } from '../photo-store.ts'
import { withRepeatKey } from './repeat-key.ts'

const RoomParamsSchema = z.strictObject({ roomId: IdSchema })
const FileParamsSchema = z.strictObject({ roomId: IdSchema, photoId: IdSchema, size: z.enum(photoSizes) })

/** Photos go in and out as bytes, so these two stand beside the table of routes. */
export async function registerPhotos(app: FastifyInstance, { photos }: { photos: PhotoStore | null }): Promise<void> {
  for (const type of photoTypes)
    app.addContentTypeParser(type, { parseAs: 'buffer', bodyLimit: maximumPhotoBytes }, (_request, body, done) =>
      done(null, body),
    )

  app.post(
    `/api/v1${photosPath}`,
    {
      bodyLimit: maximumPhotoBytes,
      schema: { hide: true, params: RoomParamsSchema, querystring: NewPhotoQuerySchema },
    },
    async (request, reply) => {
      const { roomId } = RoomParamsSchema.parse(request.params)
      const input = NewPhotoQuerySchema.parse(request.query)
      const ctx = withRepeatKey(app.contextFor(await app.personOf(request)), request)
      const image = request.body
      if (!Buffer.isBuffer(image) || image.length === 0)
        throw new RoomError('unsupported_media_type', `Send the photo itself as ${photoTypes.join(', ')}.`)
      const photo = await addPhoto({ ctx, roomId, input, store: () => storeOf(photos).store(image) })
      return reply.code(201).send(photo)
    },
  )

  app.get(`/api/v1${photoFilePath}`, { schema: { hide: true, params: FileParamsSchema } }, async (request, reply) => {
    const { roomId, photoId, size } = FileParamsSchema.parse(request.params)
    const { sha256 } = await getPhotoFile({ ctx: app.contextFor(await app.personOf(request)), roomId, photoId })
    const path = storeOf(photos).pathOf({ sha256, size })
    const file = await stat(path).catch(() => null)
    if (!file)
      throw new RoomError('not_found', 'The file of this photo is not in the data folder. Restore it from a backup.')
    // Named by content, so it never changes; private, because the room's people alone may see it.
    reply
      .header('cache-control', 'private, max-age=31536000, immutable')
      .type('image/jpeg')
      .header('content-length', file.size)
    return reply.send(createReadStream(path))
  })
}

function storeOf(photos: PhotoStore | null): PhotoStore {
  if (!photos) throw new RoomError('unavailable', 'This server keeps no photos: it was started without DATA_DIR.')
  return photos
}
