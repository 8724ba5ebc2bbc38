import * as z from 'zod/mini'
import { DeformedSchema, HeadCountSchema, IdSchema, LengthMmSchema, NoteSchema } from '../primitives.ts'
import { BeyondBookSchema } from './beyond-book.ts'

/** Animals that leave one subject and arrive at another. */
export const TransferDataSchema = z.strictObject({
  number: HeadCountSchema,
  toSubjectId: IdSchema,
  lengthMm: z.optional(LengthMmSchema),
  deformed: z.optional(DeformedSchema),
  note: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})
