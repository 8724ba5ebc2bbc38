import * as z from 'zod/mini'
import { IdSchema, InstantSchema, NameSchema, NoteSchema, PlainDateSchema, VersionSchema } from './primitives.ts'
import { trimmedText, withDefault } from './shapes.ts'
import { eggLookLacks, pairSexes } from './vocabulary.ts'

/** Id of a species profile, such as amphiprion-ocellaris. */
export const SpeciesIdSchema = z
  .string()
  .check(z.regex(/^[a-z][a-z0-9-]{2,59}$/, 'a species id such as amphiprion-ocellaris'))

const NestSiteSchema = trimmedText({ longest: 120 })

/** A fish that spawns or spawned in another pair too, and as which of the two: who lost his mate may be the female of the next. */
const SameFishSchema = z.strictObject({ pairId: IdSchema, sex: z.enum(pairSexes) })
export type SameFish = z.infer<typeof SameFishSchema>

const pairFields = {
  name: NameSchema,
  species: SpeciesIdSchema,
  tankId: IdSchema,
  nestSite: withDefault(NestSiteSchema, ''),
  formedOn: withDefault(z.nullable(PlainDateSchema), null),
  isResting: withDefault(z.boolean(), false),
  /** The clutch of this room that the fish grew up from; null where it was bought in, wild-caught, or nobody knows. */
  femaleFromClutchId: withDefault(z.nullable(IdSchema), null),
  maleFromClutchId: withDefault(z.nullable(IdSchema), null),
  /** The fish of another pair that it is; null where it is in this one alone. Said, it brings its own descent along. */
  femaleSameAs: withDefault(z.nullable(SameFishSchema), null),
  maleSameAs: withDefault(z.nullable(SameFishSchema), null),
  note: withDefault(NoteSchema, ''),
}
export const PairSchema = z
  .object({
    id: IdSchema,
    ...pairFields,
    /** What keeps the list from looking for its floating eggs today; none where it looks, or where they do not float. */
    eggLookLacks: z.array(z.enum(eggLookLacks)),
    endedAt: z.nullable(InstantSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'Pair' })
export type Pair = z.infer<typeof PairSchema>
export const NewPairSchema = z.strictObject(pairFields)
export type NewPair = z.infer<typeof NewPairSchema>
export const ChangePairSchema = z.strictObject({
  name: z.optional(NameSchema),
  tankId: z.optional(IdSchema),
  nestSite: z.optional(NestSiteSchema),
  formedOn: z.optional(z.nullable(PlainDateSchema)),
  isResting: z.optional(z.boolean()),
  femaleFromClutchId: z.optional(z.nullable(IdSchema)),
  maleFromClutchId: z.optional(z.nullable(IdSchema)),
  femaleSameAs: z.optional(z.nullable(SameFishSchema)),
  maleSameAs: z.optional(z.nullable(SameFishSchema)),
  note: z.optional(NoteSchema),
  version: VersionSchema,
})
