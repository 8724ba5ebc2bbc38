import * as z from 'zod/mini'
import { NoteSchema } from '../primitives.ts'
import { trimmedText } from '../shapes.ts'

/** A treatment as written by whoever prescribed it; nothing is suggested here. */
export const TreatmentDataSchema = z.strictObject({
  product: trimmedText({ shortest: 1, longest: 200, wanted: 'the product as it is written' }),
  dose: trimmedText({ shortest: 1, longest: 200, wanted: 'the dose as it is written' }),
  prescribedBy: trimmedText({ shortest: 1, longest: 200, wanted: 'who prescribed it' }),
  note: z.optional(NoteSchema),
})
