import * as z from 'zod/mini'
import { NoteSchema } from '../primitives.ts'
import { wholeBetween } from '../shapes.ts'
import { outcomes } from '../vocabulary.ts'
import { BeyondBookSchema } from './beyond-book.ts'

/** Fish that were placed, kept for breeding or culled: they leave the group and are counted, not lost. */
export const OutcomeDataSchema = z.strictObject({
  outcome: z.enum(outcomes),
  number: wholeBetween(1, 1_000_000),
  note: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})
