import { z } from 'zod'
import { unitSystems, units } from './vocabulary.ts'

/** UUIDv7, made by the application so that rows sort by when they were made. */
export const IdSchema = z.uuid().meta({ description: 'UUIDv7' })
export type Id = z.infer<typeof IdSchema>

// No animal here is older, and PostgreSQL and JavaScript disagree about years near 0 and 9999.
function isOfOurTime(text: string): boolean {
  const year = Number(text.slice(0, 4))
  return year >= 2000 && year <= 2100
}

/** The largest number that an integer column holds. */
export const maximumInteger = 2_147_483_647

/** ISO 8601 instant in UTC. */
export const InstantSchema = z.iso
  .datetime()
  .refine(isOfOurTime, 'an instant between the years 2000 and 2100')
  .meta({ description: 'ISO 8601 instant, UTC' })
export type Instant = z.infer<typeof InstantSchema>

/** A husbandry day: a plain date in the room's own time zone. */
export const PlainDateSchema = z.iso
  .date()
  .refine(isOfOurTime, 'a date between the years 2000 and 2100')
  .meta({ description: "Plain date in the room's time zone" })
export type PlainDate = z.infer<typeof PlainDateSchema>

/** Wall-clock time in the room's own time zone, 'HH:MM'. */
export const PlainTimeSchema = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day as HH:MM, 00:00 to 23:59')
  .meta({ description: "HH:MM in the room's time zone" })
export type PlainTime = z.infer<typeof PlainTimeSchema>

const isTimeZone = (value: string): boolean => {
  try {
    return Intl.DateTimeFormat('en', { timeZone: value }) !== undefined
  } catch {
    // The constructor throws for an unknown zone; that is the answer, not a fault.
    return false
  }
}
export const TimeZoneSchema = z
  .string()
  .max(64)
  .refine(isTimeZone, 'an IANA time zone such as Europe/Lisbon')
  .meta({ description: 'IANA time zone' })

export const NameSchema = z.string().trim().min(1, 'a name of at least one letter').max(80)
export const NoteSchema = z.string().trim().max(2000)
export const ReasonSchema = z.string().trim().min(3, 'a reason of at least three letters').max(500)

// Bounds are what a small breeding room can hold; wider values are slips of the thumb. common practice
export const VolumeLSchema = z.number().gt(0).max(20_000).meta({ description: 'litres' })
export const VolumeMlSchema = z.number().gt(0).max(100_000).meta({ description: 'millilitres' })
export const TemperatureCSchema = z.number().min(0).max(40).meta({ description: 'degrees Celsius' })
export const SalinitySchema = z.number().min(0).max(45).meta({ description: 'practical salinity (PSS-78)' })
export const PhSchema = z.number().min(4).max(11)
export const DensityPerMlSchema = z.number().min(0).max(1_000_000).meta({ description: 'animals per mL' })
export const HeadCountSchema = z.number().int().min(0).max(1_000_000)
export const ShareSchema = z.number().min(0).max(1)

export const UnitSystemSchema = z.enum(unitSystems)

/** A number with its unit; `value` is in the named unit, SI side. */
export const QuantitySchema = z.strictObject({ value: z.number(), unit: z.enum(units) })
export type Quantity = z.infer<typeof QuantitySchema>

/**
 * A sentence with its numbers kept as quantities: `{name}` in the text stands for `quantities.name`,
 * so that a screen can show it in the room's units.
 */
export const PhraseSchema = z.strictObject({
  text: z.string(),
  quantities: z.record(z.string(), QuantitySchema).default({}),
})
export type Phrase = z.infer<typeof PhraseSchema>

export const VersionSchema = z
  .number()
  .int()
  .min(1)
  .max(maximumInteger)
  .meta({ description: 'The version that the writer saw' })
