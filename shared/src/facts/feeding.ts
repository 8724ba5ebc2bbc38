import * as z from 'zod/mini'
import { IdSchema, NoteSchema } from '../primitives.ts'
import { aboveZero, numberBetween } from '../shapes.ts'
import { foods } from '../vocabulary.ts'

export const FeedingDataSchema = z.strictObject({
  food: z.enum(foods),
  concentrateId: z.optional(IdSchema),
  fromCultureId: z.optional(IdSchema),
  amountMl: z.optional(aboveZero(20_000)),
  amountG: z.optional(aboveZero(20_000)),
  animals: z.optional(numberBetween(0, 1e12)),
  /** Out of that culture's chilled reserve, not out of its vessel. */
  isChilled: z.optional(z.boolean()),
  note: z.optional(NoteSchema),
})
