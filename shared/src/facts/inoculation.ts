import * as z from 'zod/mini'
import { DensityPerMlSchema, IdSchema } from '../primitives.ts'
import { numberBetween } from '../shapes.ts'

/** Animals put into a culture, from a parent or bought in. */
export const InoculationDataSchema = z.strictObject({
  densityPerMl: z.optional(DensityPerMlSchema),
  animals: z.optional(numberBetween(0, 1e12)),
  fromCultureId: z.optional(IdSchema),
})
