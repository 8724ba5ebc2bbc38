import * as z from 'zod/mini'
import { PhSchema, SalinitySchema, TemperatureCSchema } from '../primitives.ts'
import { numberBetween } from '../shapes.ts'

/** Concentrations are mg/L; ammonia, nitrite and nitrate are as nitrogen (N), total ammonia as total. */
export const WaterTestDataSchema = z
  .strictObject({
    temperatureC: z.optional(TemperatureCSchema),
    salinity: z.optional(SalinitySchema),
    pH: z.optional(PhSchema),
    totalAmmoniaNMgPerL: z.optional(numberBetween(0, 100)),
    nitriteNMgPerL: z.optional(numberBetween(0, 100)),
    nitrateNMgPerL: z.optional(numberBetween(0, 1000)),
    oxygenMgPerL: z.optional(numberBetween(0, 30)),
  })
  .check(z.refine((test) => Object.values(test).some((value) => value !== undefined), 'at least one measured value'))
export type WaterTestData = z.infer<typeof WaterTestDataSchema>
