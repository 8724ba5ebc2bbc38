import * as z from 'zod/mini'
import { IdSchema, InstantSchema } from './primitives.ts'
import { trimmedText, withDefault } from './shapes.ts'
import { photoLooks } from './vocabulary.ts'

/** A photo on a record. Position and camera data are taken out before it is stored. */
export const PhotoSchema = z
  .object({
    id: IdSchema,
    subjectId: IdSchema,
    factId: z.nullable(IdSchema),
    addedAt: InstantSchema,
    addedByName: z.string(),
    width: z.int(),
    height: z.int(),
    bytes: z.int(),
    caption: z.string(),
    /** What an owner says that this is what it looks like here; null for any other photo. */
    shows: z.nullable(z.enum(photoLooks)),
  })
  .register(z.globalRegistry, { id: 'Photo' })
export type Photo = z.infer<typeof PhotoSchema>

export const MarkPhotoSchema = z.strictObject({ shows: z.nullable(z.enum(photoLooks)) })

/** Photos come as the raw bytes of a JPEG, PNG or WebP file, with these beside it in the query. */
export const NewPhotoQuerySchema = z.strictObject({
  subjectId: IdSchema,
  factId: z.optional(IdSchema),
  caption: withDefault(trimmedText({ longest: 300 }), ''),
})
