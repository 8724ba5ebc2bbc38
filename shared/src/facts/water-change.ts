import * as z from 'zod/mini'
import { SalinitySchema, TemperatureCSchema } from '../primitives.ts'
import { numberBetween } from '../shapes.ts'

/** Water taken out and put in; a top-up after evaporation takes nothing out and has salinity 0. */
export const WaterChangeDataSchema = z.strictObject({
  removedL: numberBetween(0, 20_000),
  addedL: numberBetween(0, 20_000),
  salinity: z.optional(SalinitySchema),
  temperatureC: z.optional(TemperatureCSchema),
})
