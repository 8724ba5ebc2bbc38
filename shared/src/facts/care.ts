import * as z from 'zod/mini'
import { NoteSchema, VolumeLSchema } from '../primitives.ts'
import { numberBetween } from '../shapes.ts'
import { careActs } from '../vocabulary.ts'

export const CareDataSchema = z.strictObject({
  act: z.enum(careActs),
  litres: z.optional(VolumeLSchema),
  saltG: z.optional(numberBetween(0, 1e6)),
  note: z.optional(NoteSchema),
})
