import * as z from 'zod/mini'
import { DeformedSchema, NoteSchema } from '../primitives.ts'
import { wholeBetween } from '../shapes.ts'
import { lossTargets } from '../vocabulary.ts'
import { BeyondBookSchema } from './beyond-book.ts'

export const LossDataSchema = z.strictObject({
  number: wholeBetween(1, 1_000_000),
  of: z.enum(lossTargets),
  deformed: z.optional(DeformedSchema),
  cause: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})
