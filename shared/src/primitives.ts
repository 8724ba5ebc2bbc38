import * as z from 'zod/mini'
import { locales } from './locales.ts'
import { aboveZero, atMost, numberBetween, trimmedText, wholeBetween, withDefault } from './shapes.ts'
import { subjectKinds, unitSystems, units } from './vocabulary.ts'

/** UUIDv7, made by the application so that rows sort by when they were made. */
export const IdSchema = z.uuid().register(z.globalRegistry, { description: 'UUIDv7' })
export type Id = z.infer<typeof IdSchema>

/** A thing of the room, or the room itself, with the name that people know it by. */
export const SubjectRefSchema = z.object({ id: IdSchema, kind: z.enum(subjectKinds), name: z.string() })

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
  .check(z.refine(isOfOurTime, 'an instant between the years 2000 and 2100'))
  .register(z.globalRegistry, { description: 'ISO 8601 instant, UTC' })
export type Instant = z.infer<typeof InstantSchema>

/** A husbandry day: a plain date in the room's own time zone. */
export const PlainDateSchema = z.iso
  .date()
  .check(z.refine(isOfOurTime, 'a date between the years 2000 and 2100'))
  .register(z.globalRegistry, { description: "Plain date in the room's time zone" })
export type PlainDate = z.infer<typeof PlainDateSchema>

/** Wall-clock time in the room's own time zone, 'HH:MM'. */
export const PlainTimeSchema = z
  .string()
  .check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day as HH:MM, 00:00 to 23:59'))
  .register(z.globalRegistry, { description: "HH:MM in the room's time zone" })
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
  .check(atMost(64), z.refine(isTimeZone, 'an IANA time zone such as Europe/Lisbon'))
  .register(z.globalRegistry, { description: 'IANA time zone' })

export const NameSchema = trimmedText({ shortest: 1, longest: 80, wanted: 'a name of at least one letter' })
export const NoteSchema = trimmedText({ longest: 2000 })
export const ReasonSchema = trimmedText({ shortest: 3, longest: 500, wanted: 'a reason of at least three letters' })

// Bounds are what a small breeding room can hold; wider values are slips of the thumb. common practice
export const VolumeLSchema = aboveZero(20_000).register(z.globalRegistry, { description: 'litres' })
export const TemperatureCSchema = numberBetween(0, 40).register(z.globalRegistry, { description: 'degrees Celsius' })
export const SalinitySchema = numberBetween(0, 45).register(z.globalRegistry, {
  description: 'practical salinity (PSS-78)',
})
/** Bent, short-gilled or lacking a fin, among those that were looked at. */
export const DeformedSchema = wholeBetween(0, 100_000)
/** Total length of the middle one of those measured, where young fish were held to a ruler. */
export const LengthMmSchema = numberBetween(1, 300)
/** Hours of light a day; null for as many as the tank's use asks for. */
export const LightHoursSchema = z.nullable(numberBetween(1, 24))
export const PhSchema = numberBetween(4, 11)
export const DensityPerMlSchema = numberBetween(0, 1_000_000).register(z.globalRegistry, {
  description: 'animals per mL',
})
export const HeadCountSchema = wholeBetween(0, 1_000_000)
export const ShareSchema = numberBetween(0, 1)

export const UnitSystemSchema = z.enum(unitSystems)
export const LocaleSchema = z
  .enum(locales)
  .register(z.globalRegistry, { description: 'How numbers, dates and times of day are written' })

/** A number with its unit; `value` is in the named unit, SI side. */
export const QuantitySchema = z.strictObject({ value: z.number(), unit: z.enum(units) })
export type Quantity = z.infer<typeof QuantitySchema>

/**
 * A sentence with its numbers kept as quantities: `{name}` in the text stands for `quantities.name`,
 * so that a screen can show it in the room's units.
 */
export const PhraseSchema = z.strictObject({
  text: z.string(),
  quantities: withDefault(z.record(z.string(), QuantitySchema), {}),
})
export type Phrase = z.infer<typeof PhraseSchema>

export const VersionSchema = wholeBetween(1, maximumInteger).register(z.globalRegistry, {
  description: 'The version that the writer saw',
})
