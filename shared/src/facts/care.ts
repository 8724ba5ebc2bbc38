import * as z from 'zod/mini'
import { NoteSchema, SalinitySchema, VolumeLSchema } from '../primitives.ts'
import { numberBetween, wholeBetween } from '../shapes.ts'
import { careActs } from '../vocabulary.ts'

export const CareDataSchema = z.strictObject({
  act: z.enum(careActs),
  litres: z.optional(VolumeLSchema),
  saltG: z.optional(numberBetween(0, 1e6)),
  /** Fish that arrived, with the litres and the salinity of the water they came in. */
  number: z.optional(wholeBetween(0, 100_000)),
  salinity: z.optional(SalinitySchema),
  note: z.optional(NoteSchema),
})
