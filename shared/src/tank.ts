import { z } from 'zod'
import {
  IdSchema,
  InstantSchema,
  NameSchema,
  NoteSchema,
  SalinitySchema,
  TemperatureCSchema,
  VersionSchema,
  VolumeLSchema,
} from './primitives.ts'
import { tankKinds } from './vocabulary.ts'

export const TankKindSchema = z.enum(tankKinds)

const tankFields = {
  name: NameSchema,
  kind: TankKindSchema,
  volumeL: VolumeLSchema,
  temperatureC: TemperatureCSchema,
  salinity: SalinitySchema,
  hasFilter: z.boolean().default(false),
  note: NoteSchema.default(''),
}
export const TankSchema = z
  .object({ id: IdSchema, ...tankFields, endedAt: InstantSchema.nullable(), version: VersionSchema })
  .meta({ id: 'Tank' })
export type Tank = z.infer<typeof TankSchema>
export const NewTankSchema = z.strictObject(tankFields)
export type NewTank = z.infer<typeof NewTankSchema>
export const ChangeTankSchema = z.strictObject({
  name: NameSchema.optional(),
  kind: TankKindSchema.optional(),
  volumeL: VolumeLSchema.optional(),
  temperatureC: TemperatureCSchema.optional(),
  salinity: SalinitySchema.optional(),
  hasFilter: z.boolean().optional(),
  note: NoteSchema.optional(),
  version: VersionSchema,
})
