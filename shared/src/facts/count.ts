import * as z from 'zod/mini'
import { DeformedSchema, LengthMmSchema } from '../primitives.ts'
import { aboveZero, atLeast, atMost, numberBetween, wholeBetween, withDefault } from '../shapes.ts'
import { countTargets } from '../vocabulary.ts'

/**
 * A sampled count, never a bare number: what was counted in each replicate, the volume of each, the dilution.
 * For heads (larvae, eggs, juveniles counted one by one) `volumeMl` is left out.
 */
export const CountDataSchema = z.strictObject({
  of: z.enum(countTargets),
  animals: z.array(wholeBetween(0, 100_000)).check(atLeast(1), atMost(20)),
  volumeMl: z.optional(aboveZero(10_000)),
  dilution: withDefault(numberBetween(1, 10_000), 1),
  /** Eggs seen on the females looked at, for the egg ratio. */
  eggs: z.optional(wholeBetween(0, 100_000)),
  females: z.optional(wholeBetween(1, 100_000)),
  lengthMm: z.optional(LengthMmSchema),
  deformed: z.optional(DeformedSchema),
})
export type CountData = z.infer<typeof CountDataSchema>
