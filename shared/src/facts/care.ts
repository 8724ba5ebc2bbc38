import * as z from 'zod/mini'
import { NoteSchema, PlainDateSchema, SalinitySchema, ShareSchema, VolumeLSchema } from '../primitives.ts'
import { numberBetween, wholeBetween } from '../shapes.ts'
import { careActs } from '../vocabulary.ts'

export const CareDataSchema = z.strictObject({
  act: z.enum(careActs),
  litres: z.optional(VolumeLSchema),
  saltG: z.optional(numberBetween(0, 1e6)),
  /** Fish that arrived, with the litres and the salinity of the water they came in. */
  number: z.optional(wholeBetween(0, 100_000)),
  salinity: z.optional(SalinitySchema),
  /** Cysts weighed, the date of the feeds that they are for, and what a test of the tin gave. */
  cystsG: z.optional(numberBetween(0, 10_000)),
  forDate: z.optional(PlainDateSchema),
  naupliiPerGram: z.optional(numberBetween(0, 1e6)),
  /** Of the bleach used, by its label. */
  strength: z.optional(ShareSchema),
  note: z.optional(NoteSchema),
})
