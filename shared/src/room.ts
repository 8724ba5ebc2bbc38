import * as z from 'zod/mini'
import { NewConcentrateSchema } from './concentrate.ts'
import { NewCultureSchema } from './culture.ts'
import { NewJuvenileGroupSchema } from './juvenile-group.ts'
import { NewLarvalBatchSchema } from './larval-batch.ts'
import { SpeciesIdSchema } from './pair.ts'
import { RoleSchema } from './person.ts'
import {
  IdSchema,
  LocaleSchema,
  NameSchema,
  PlainDateSchema,
  PlainTimeSchema,
  SalinitySchema,
  TemperatureCSchema,
  TimeZoneSchema,
  UnitSystemSchema,
  VersionSchema,
} from './primitives.ts'
import { atLeast, atMost, exactly, withDefault } from './shapes.ts'
import { NewTankSchema } from './tank.ts'
import { type Station, stations } from './vocabulary.ts'

/** One walk through the room; `id` never changes once tasks name it. */
export const RoundSchema = z.strictObject({
  id: z.string().check(z.regex(/^[a-z][a-z0-9_]{0,19}$/, 'at most 20 of a-z, 0-9 and _, the first a letter')),
  name: NameSchema,
  at: PlainTimeSchema,
})
export type Round = z.infer<typeof RoundSchema>

export const RoundsSchema = z.array(RoundSchema).check(
  atLeast(1),
  atMost(8),
  z.refine((rounds) => new Set(rounds.map((round) => round.id)).size === rounds.length, 'rounds with different ids'),
  z.refine(
    (rounds) => rounds.every((round, i) => i === 0 || rounds[i - 1]!.at < round.at),
    'rounds in order of time, each later than the one before',
  ),
)

const isWalk = (order: readonly Station[]): boolean =>
  stations.every((station) => order.includes(station)) &&
  order.slice(order.indexOf('quarantine') + 1).every((station) => station === 'room')

/** The stations as this room walks them. What is sick comes after all that is healthy, whatever the room prefers. */
export const StationOrderSchema = z
  .array(z.enum(stations))
  .check(exactly(stations.length), z.refine(isWalk, 'every station once, and no animals after quarantine'))

const roomFields = {
  name: NameSchema,
  timeZone: TimeZoneSchema,
  units: UnitSystemSchema,
  locale: LocaleSchema,
  lightsOnAt: PlainTimeSchema,
  lightsOffAt: PlainTimeSchema,
  rounds: RoundsSchema,
  stationOrder: StationOrderSchema,
  /** Salinity that new water is mixed to unless a vessel says otherwise. */
  salinity: SalinitySchema,
  temperatureC: TemperatureCSchema,
}

/** Whoever acts as an owner of the room is asked for a second factor. */
const asksSecondFactor = z.boolean()

export const RoomSchema = z
  .object({
    id: IdSchema,
    ...roomFields,
    isDemo: z.boolean(),
    asksSecondFactor,
    revision: z.int(),
    version: VersionSchema,
    myRole: RoleSchema,
  })
  .register(z.globalRegistry, { id: 'Room' })
export type Room = z.infer<typeof RoomSchema>

/** 12 h of light and three walks a day: common practice. */
export const defaultRounds: Round[] = [
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'midday', name: 'Midday', at: '12:30' },
  { id: 'evening', name: 'Evening', at: '18:30' },
]

/** A pair of the wizard lives in a tank of the same request, by its name. */
const SetupPairSchema = z.strictObject({
  name: NameSchema,
  species: SpeciesIdSchema,
  tank: NameSchema,
  formedOn: withDefault(z.nullable(PlainDateSchema), null),
})

/** Larvae that swim already, in a tank of the same request, fed from a culture of it. */
const SetupBatchSchema = z.strictObject({
  ...z.pick(NewLarvalBatchSchema, { name: true, hatchedOn: true, larvae: true }).shape,
  species: SpeciesIdSchema,
  tank: NameSchema,
  fedFrom: z.optional(NameSchema),
})

/** Settled fish, in a tank of the same request. */
const SetupGroupSchema = z.strictObject({
  ...z.pick(NewJuvenileGroupSchema, { name: true, settledOn: true, number: true }).shape,
  species: SpeciesIdSchema,
  tank: NameSchema,
})

/** The wizard's one request: the room with its first vessels, all or nothing. */
export const RoomSetupSchema = z.strictObject({
  ...roomFields,
  locale: withDefault(LocaleSchema, 'en-GB'),
  rounds: withDefault(RoundsSchema, defaultRounds),
  stationOrder: withDefault(StationOrderSchema, [...stations]),
  concentrate: z.optional(NewConcentrateSchema),
  tanks: withDefault(z.array(NewTankSchema).check(atMost(50)), []),
  cultures: withDefault(
    z.array(z.omit(NewCultureSchema, { concentrateId: true, parentCultureId: true })).check(atMost(50)),
    [],
  ),
  pairs: withDefault(z.array(SetupPairSchema).check(atMost(50)), []),
  batches: withDefault(z.array(SetupBatchSchema).check(atMost(50)), []),
  groups: withDefault(z.array(SetupGroupSchema).check(atMost(50)), []),
})
export type RoomSetup = z.infer<typeof RoomSetupSchema>

export const ChangeRoomSchema = z.required(
  z.partial(z.strictObject({ ...roomFields, asksSecondFactor, version: VersionSchema })),
  {
    version: true,
  },
)
export type ChangeRoom = z.infer<typeof ChangeRoomSchema>
