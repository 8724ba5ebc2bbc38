import { z } from 'zod'
import { NewConcentrateSchema } from './concentrate.ts'
import { NewCultureSchema } from './culture.ts'
import { RoleSchema } from './person.ts'
import {
  IdSchema,
  NameSchema,
  PlainTimeSchema,
  SalinitySchema,
  TemperatureCSchema,
  TimeZoneSchema,
  UnitSystemSchema,
  VersionSchema,
} from './primitives.ts'
import { NewTankSchema } from './tank.ts'
import { type Station, stations } from './vocabulary.ts'

/** One walk through the room; `id` never changes once tasks name it. */
export const RoundSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9_]{0,19}$/, 'lower-case letters, digits and _, at most 20'),
  name: NameSchema,
  at: PlainTimeSchema,
})
export type Round = z.infer<typeof RoundSchema>

export const RoundsSchema = z
  .array(RoundSchema)
  .min(1)
  .max(8)
  .refine((rounds) => new Set(rounds.map((round) => round.id)).size === rounds.length, 'rounds with different ids')
  .refine(
    (rounds) => rounds.every((round, i) => i === 0 || rounds[i - 1]!.at < round.at),
    'rounds in order of time, each later than the one before',
  )

const isWalk = (order: readonly Station[]): boolean =>
  stations.every((station) => order.includes(station)) &&
  order.slice(order.indexOf('quarantine') + 1).every((station) => station === 'room')

/** The stations as this room walks them. What is sick comes after all that is healthy, whatever the room prefers. */
export const StationOrderSchema = z
  .array(z.enum(stations))
  .length(stations.length)
  .refine(isWalk, 'every station once, and no animals after quarantine')

const roomFields = {
  name: NameSchema,
  timeZone: TimeZoneSchema,
  units: UnitSystemSchema,
  lightsOnAt: PlainTimeSchema,
  lightsOffAt: PlainTimeSchema,
  rounds: RoundsSchema,
  stationOrder: StationOrderSchema,
  /** Salinity that new water is mixed to unless a vessel says otherwise. */
  salinity: SalinitySchema,
  temperatureC: TemperatureCSchema,
}

export const RoomSchema = z
  .object({
    id: IdSchema,
    ...roomFields,
    isDemo: z.boolean(),
    revision: z.number().int(),
    version: VersionSchema,
    myRole: RoleSchema,
  })
  .meta({ id: 'Room' })
export type Room = z.infer<typeof RoomSchema>

/** 12 h of light and three walks a day: common practice. */
export const defaultRounds: Round[] = [
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'midday', name: 'Midday', at: '12:30' },
  { id: 'evening', name: 'Evening', at: '18:30' },
]

/** The wizard's one request: the room with its first vessels, all or nothing. */
export const RoomSetupSchema = z.strictObject({
  ...roomFields,
  rounds: RoundsSchema.default(defaultRounds),
  stationOrder: StationOrderSchema.default([...stations]),
  concentrate: NewConcentrateSchema.optional(),
  tanks: z.array(NewTankSchema).max(50).default([]),
  cultures: z
    .array(NewCultureSchema.omit({ concentrateId: true, parentCultureId: true }))
    .max(50)
    .default([]),
})
export type RoomSetup = z.infer<typeof RoomSetupSchema>

export const ChangeRoomSchema = z
  .strictObject({ ...roomFields, version: VersionSchema })
  .partial()
  .required({ version: true })
export type ChangeRoom = z.infer<typeof ChangeRoomSchema>
