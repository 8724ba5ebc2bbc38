import * as z from 'zod/mini'
import { DeformedSchema, NoteSchema } from '../primitives.ts'
import { wholeBetween } from '../shapes.ts'
import { BeyondBookSchema } from './beyond-book.ts'

export const LossDataSchema = z.strictObject({
  number: wholeBetween(1, 1_000_000),
  of: z.enum(['eggs', 'larvae', 'juveniles', 'adults', 'culture']),
  deformed: z.optional(DeformedSchema),
  cause: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})
