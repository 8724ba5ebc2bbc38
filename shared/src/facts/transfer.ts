import * as z from 'zod/mini'
import { HeadCountSchema, IdSchema, NoteSchema } from '../primitives.ts'
import { BeyondBookSchema } from './beyond-book.ts'

/** Animals that leave one subject and arrive at another. */
export const TransferDataSchema = z.strictObject({
  number: HeadCountSchema,
  toSubjectId: IdSchema,
  note: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})
