import * as z from 'zod/mini'
import { TopicSchema } from './broker.ts'
import { GaugeKeySchema } from './gauge-key.ts'
import { UserIdSchema } from './person.ts'
import { IdSchema, InstantSchema, NameSchema, SubjectRefSchema, VersionSchema } from './primitives.ts'
import { numberBetween, wholeBetween, withDefault } from './shapes.ts'
import { alarmKinds, gaugeQuantities, units } from './vocabulary.ts'

// Wider than any band that is worth keeping to; the quantity's own range is looked at with it.
const LimitSchema = z.nullable(numberBetween(-1000, 1000))
const gaugeFields = {
  /** Put right by this much: what is kept is the value that comes and this. From its change on. */
  offset: withDefault(numberBetween(-50, 50), 0),
  low: withDefault(LimitSchema, null),
  high: withDefault(LimitSchema, null),
  /** Minutes outside of the band before it is an alarm, and inside before that is over. */
  forMinutes: withDefault(wholeBetween(1, 24 * 60), 10),
  silentAfterMinutes: withDefault(wholeBetween(2, 7 * 24 * 60), 30),
  /** The most that it may change within an hour, in its unit; null: as much as it likes. */
  maxPerHour: withDefault(z.nullable(numberBetween(0.01, 1000)), null),
  /** Hours of one and the same value after which it is stuck; null: it may stand still. */
  stuckAfterHours: withDefault(z.nullable(wholeBetween(2, 240)), 24),
}

export const NewGaugeSchema = z.strictObject({
  key: GaugeKeySchema,
  quantity: z.enum(gaugeQuantities),
  /** The tank or culture that it hangs in, or the room. */
  subjectId: IdSchema,
  ...gaugeFields,
})
export type NewGauge = z.infer<typeof NewGaugeSchema>
export const ChangeGaugeSchema = z.strictObject({
  offset: z.optional(numberBetween(-50, 50)),
  low: z.optional(LimitSchema),
  high: z.optional(LimitSchema),
  forMinutes: z.optional(wholeBetween(1, 24 * 60)),
  silentAfterMinutes: z.optional(wholeBetween(2, 7 * 24 * 60)),
  maxPerHour: z.optional(z.nullable(numberBetween(0.01, 1000))),
  stuckAfterHours: z.optional(z.nullable(wholeBetween(2, 240))),
  version: VersionSchema,
})

const ReadingSchema = z.object({ at: InstantSchema, value: z.number() })
/** What the water of a vessel holds of oxygen at saturation, by its warmth and salinity, read lately or as it is set. */
const OxygenSaturationSchema = z
  .object({
    mgPerL: z.number(),
    temperatureC: z.number(),
    salinity: z.number(),
    isRead: z.object({ temperature: z.boolean(), salinity: z.boolean() }),
  })
  .register(z.globalRegistry, { id: 'OxygenSaturation' })
export type OxygenSaturation = z.infer<typeof OxygenSaturationSchema>

/** One quantity at one place. */
export const GaugeSchema = z
  .object({
    id: IdSchema,
    deviceId: IdSchema,
    key: GaugeKeySchema,
    quantity: z.enum(gaugeQuantities),
    unit: z.enum(units),
    subject: SubjectRefSchema,
    offset: z.number(),
    low: z.nullable(z.number()),
    high: z.nullable(z.number()),
    forMinutes: z.int(),
    silentAfterMinutes: z.int(),
    maxPerHour: z.nullable(z.number()),
    stuckAfterHours: z.nullable(z.int()),
    /** Its newest reading of the last month. */
    latest: z.nullable(ReadingSchema),
    /** Of a gauge of oxygen in a tank or a culture. */
    saturation: z.nullable(OxygenSaturationSchema),
    endedAt: z.nullable(InstantSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'Gauge' })
export type Gauge = z.infer<typeof GaugeSchema>

export const NewDeviceSchema = z.strictObject({ name: NameSchema })
export type NewDevice = z.infer<typeof NewDeviceSchema>
export const ChangeDeviceSchema = z.strictObject({
  name: z.optional(NameSchema),
  /** Where it publishes at the room's broker; null: nowhere. */
  topic: z.optional(z.nullable(TopicSchema)),
  version: VersionSchema,
})
export type ChangeDevice = z.infer<typeof ChangeDeviceSchema>
export const DeviceSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    topic: z.nullable(TopicSchema),
    createdAt: InstantSchema,
    /** When something of it last came, to the minute. */
    lastSeenAt: z.nullable(InstantSchema),
    revokedAt: z.nullable(InstantSchema),
    gauges: z.array(GaugeSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'Device' })
export type Device = z.infer<typeof DeviceSchema>
/** The token is in this answer and nowhere else: the server keeps its hash. */
export const CreatedDeviceSchema = z
  .object({ device: DeviceSchema, token: z.string() })
  .register(z.globalRegistry, { id: 'CreatedDevice' })
export type CreatedDevice = z.infer<typeof CreatedDeviceSchema>

export const refusedReadingReasons = [
  'no_gauge',
  'unknown_gauge',
  'not_a_number',
  'wrong_unit',
  'no_time',
  'in_the_future',
  'too_old',
  'beyond_sense',
] as const
const RefusedReadingSchema = z.object({
  /** Its place in the post, from 0. */
  index: z.int(),
  gauge: z.nullable(z.string()),
  reason: z.enum(refusedReadingReasons),
  detail: z.string(),
})
export type RefusedReading = z.infer<typeof RefusedReadingSchema>
/** What became of a post: what is kept is committed, what is refused is named and the rest kept all the same. */
export const PostedReadingsSchema = z
  .object({
    /** Kept once each: a reading of a gauge and time that came before changes nothing and counts here. */
    kept: z.int(),
    refusedNumber: z.int(),
    /** The first hundred of them. */
    refusals: z.array(RefusedReadingSchema),
  })
  .register(z.globalRegistry, { id: 'PostedReadings' })
export type PostedReadings = z.infer<typeof PostedReadingsSchema>
export const postTypes = ['application/json', 'application/senml+json', 'text/csv'] as const
export const mostPostBytes = 4 * 1024 * 1024

/** A gauge over a span of time, in steps as wide as a chart needs; steps without a reading are left out. */
export const SeriesSchema = z
  .object({
    gaugeId: IdSchema,
    from: InstantSchema,
    to: InstantSchema,
    stepS: z.int(),
    points: z.array(
      z.object({
        at: InstantSchema,
        low: z.number(),
        high: z.number(),
        mean: z.number(),
        number: z.int(),
      }),
    ),
  })
  .register(z.globalRegistry, { id: 'Series' })
export type GaugeSeries = z.infer<typeof SeriesSchema>

/** One trouble of one gauge, from when it was raised until it was over. */
export const AlarmSchema = z
  .object({
    id: IdSchema,
    gauge: z.object({
      id: IdSchema,
      key: GaugeKeySchema,
      quantity: z.enum(gaugeQuantities),
      unit: z.enum(units),
      low: z.nullable(z.number()),
      high: z.nullable(z.number()),
    }),
    subject: SubjectRefSchema,
    kind: z.enum(alarmKinds),
    raisedAt: InstantSchema,
    /** The value that raised it, or by how much it changed within the hour; none of a silence. */
    value: z.nullable(z.number()),
    acknowledgedAt: z.nullable(InstantSchema),
    acknowledgedByName: z.nullable(z.string()),
    /** Nobody is told again before then. */
    quietUntil: z.nullable(InstantSchema),
    /** Who is told instead of whoever has the room. */
    handedToName: z.nullable(z.string()),
    clearedAt: z.nullable(InstantSchema),
  })
  .register(z.globalRegistry, { id: 'Alarm' })
export type Alarm = z.infer<typeof AlarmSchema>

export const QuietAlarmSchema = z.strictObject({ minutes: wholeBetween(5, 24 * 60) })
export const HandAlarmSchema = z.strictObject({ userId: UserIdSchema })
