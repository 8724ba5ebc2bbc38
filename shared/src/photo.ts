import { z } from 'zod'
import { IdSchema, InstantSchema } from './primitives.ts'

/** A photo on a record. Position and camera data are taken out before it is stored. */
export const PhotoSchema = z
  .object({
    id: IdSchema,
    subjectId: IdSchema,
    factId: IdSchema.nullable(),
    addedAt: InstantSchema,
    addedByName: z.string(),
    width: z.number().int(),
    height: z.number().int(),
    bytes: z.number().int(),
    caption: z.string(),
  })
  .meta({ id: 'Photo' })
export type Photo = z.infer<typeof PhotoSchema>

/** Photos come as the raw bytes of a JPEG, PNG or WebP file, with these beside it in the query. */
export const NewPhotoQuerySchema = z.strictObject({
  subjectId: IdSchema,
  factId: IdSchema.optional(),
  caption: z.string().trim().max(300).default(''),
})
export const photoTypes = ['image/jpeg', 'image/png', 'image/webp'] as const
export const maximumPhotoBytes = 15 * 1024 * 1024
/** Outside the table because their bodies are bytes: POST photos, GET one as 'full' or 'thumbnail'. */
export const photosPath = '/rooms/:roomId/photos'
export const photoFilePath = '/rooms/:roomId/photos/:photoId/:size'
export const photoSizes = ['full', 'thumbnail'] as const
