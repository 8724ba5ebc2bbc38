import * as z from 'zod/mini'
import { GaugeKeySchema } from '../gauge-key.ts'
import { IdSchema, InstantSchema, PhSchema, SalinitySchema, TemperatureCSchema } from '../primitives.ts'
import { numberBetween } from '../shapes.ts'

/** The mean of some hours of a gauge, as the room's records hold it: one quantity, and the gauge that read it. */
export const WaterReadingDataSchema = z
  .strictObject({
    gaugeId: IdSchema,
    /** What its device calls it. */
    gaugeKey: GaugeKeySchema,
    /** Of readings from here on, until the time of the record. */
    from: InstantSchema,
    readings: z.int().check(z.minimum(1)),
    temperatureC: z.optional(TemperatureCSchema),
    salinity: z.optional(SalinitySchema),
    pH: z.optional(PhSchema),
    oxygenMgPerL: z.optional(numberBetween(0, 30)),
  })
  .check(
    z.refine(
      ({ temperatureC, salinity, pH, oxygenMgPerL }) =>
        [temperatureC, salinity, pH, oxygenMgPerL].filter((value) => value !== undefined).length === 1,
      'one measured value',
    ),
  )
export type WaterReadingData = z.infer<typeof WaterReadingDataSchema>
