import * as z from 'zod/mini'
import { IdSchema, VolumeLSchema } from '../primitives.ts'
import { aboveZero, atLeast, atMost } from '../shapes.ts'
import { harvestDestinations } from '../vocabulary.ts'

export const HarvestPartSchema = z.strictObject({
  to: z.enum(harvestDestinations),
  subjectId: z.optional(IdSchema),
  volumeL: aboveZero(20_000),
})

/** Litres taken from a culture and where each litre went; the parts add up to the whole. */
export const HarvestDataSchema = z
  .strictObject({
    volumeL: VolumeLSchema,
    parts: z.array(HarvestPartSchema).check(atLeast(1), atMost(20)),
    /** mL that what was sieved stands in. */
    keptMl: z.optional(aboveZero(20_000)),
  })
  .check(
    z.refine(
      (harvest) => Math.abs(harvest.parts.reduce((sum, part) => sum + part.volumeL, 0) - harvest.volumeL) < 0.0051,
      { path: ['parts'], message: 'parts that add up to the litres taken' },
    ),
    z.refine(
      (harvest) =>
        harvest.parts.every(
          (part) => (part.to === 'larval_batch' || part.to === 'culture') === (part.subjectId !== undefined),
        ),
      {
        path: ['parts'],
        message: 'a subjectId for each part that went to a larval batch or a culture, and for no other',
      },
    ),
  )
export type HarvestData = z.infer<typeof HarvestDataSchema>
