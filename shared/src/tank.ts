import * as z from 'zod/mini'
import {
  IdSchema,
  InstantSchema,
  LightHoursSchema,
  NameSchema,
  NoteSchema,
  SalinitySchema,
  TemperatureCSchema,
  VersionSchema,
  VolumeLSchema,
} from './primitives.ts'
import { withDefault } from './shapes.ts'
import { tankKinds } from './vocabulary.ts'

export const TankKindSchema = z.enum(tankKinds)

const tankFields = {
  name: NameSchema,
  kind: TankKindSchema,
  volumeL: VolumeLSchema,
  temperatureC: TemperatureCSchema,
  salinity: SalinitySchema,
  hasFilter: withDefault(z.boolean(), false),
  lightHours: withDefault(LightHoursSchema, null),
  note: withDefault(NoteSchema, ''),
}
export const TankSchema = z
  .object({ id: IdSchema, ...tankFields, endedAt: z.nullable(InstantSchema), version: VersionSchema })
  .register(z.globalRegistry, { id: 'Tank' })
export type Tank = z.infer<typeof TankSchema>
export const NewTankSchema = z.strictObject(tankFields)
export type NewTank = z.infer<typeof NewTankSchema>
export const ChangeTankSchema = z.strictObject({
  name: z.optional(NameSchema),
  kind: z.optional(TankKindSchema),
  volumeL: z.optional(VolumeLSchema),
  temperatureC: z.optional(TemperatureCSchema),
  salinity: z.optional(SalinitySchema),
  hasFilter: z.optional(z.boolean()),
  lightHours: z.optional(LightHoursSchema),
  note: z.optional(NoteSchema),
  version: VersionSchema,
})
