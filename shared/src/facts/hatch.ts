import * as z from 'zod/mini'
import { HeadCountSchema, IdSchema, ShareSchema } from '../primitives.ts'

/** A hatch seen the morning after: how much of the clutch, how many larvae, and into which batch. */
export const HatchDataSchema = z.strictObject({
  hatchedOn: z.iso.date(),
  share: z.optional(ShareSchema),
  larvae: z.optional(HeadCountSchema),
  batchId: z.optional(IdSchema),
})
