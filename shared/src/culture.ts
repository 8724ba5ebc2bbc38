import * as z from 'zod/mini'
import { EndSchema } from './larval-batch.ts'
import {
  DensityPerMlSchema,
  IdSchema,
  InstantSchema,
  NameSchema,
  NoteSchema,
  SalinitySchema,
  TemperatureCSchema,
  VersionSchema,
  VolumeLSchema,
} from './primitives.ts'
import { withDefault } from './shapes.ts'
import { cultureEndCauses, cultureKinds, rotiferStrains } from './vocabulary.ts'

export const CultureKindSchema = z.enum(cultureKinds)
export const RotiferStrainSchema = z.enum(rotiferStrains)
const CultureEndCauseSchema = z.enum(cultureEndCauses)

const cultureFields = {
  name: NameSchema,
  kind: CultureKindSchema,
  /** Required for rotifers. */
  strain: withDefault(z.nullable(RotiferStrainSchema), null),
  /** Litres of water in it when full to its mark. */
  volumeL: VolumeLSchema,
  temperatureC: TemperatureCSchema,
  salinity: SalinitySchema,
  hasFilter: withDefault(z.boolean(), false),
  /** A backup is left alone: own tools, own air, own feed bottle, not harvested for larvae. */
  isBackup: withDefault(z.boolean(), false),
  concentrateId: withDefault(z.nullable(IdSchema), null),
  parentCultureId: withDefault(z.nullable(IdSchema), null),
  /** What it shares with other cultures of the same word, and may be lost of together with them. */
  airLine: withDefault(z.nullable(NameSchema), null),
  shelf: withDefault(z.nullable(NameSchema), null),
  /** Sieve, brush and beaker. */
  tools: withDefault(z.nullable(NameSchema), null),
  note: withDefault(NoteSchema, ''),
}
const hasStrainIfRotifer = (culture: { kind: string; strain?: string | null }) =>
  culture.kind !== 'rotifer' || culture.strain != null
const strainMessage = { path: ['strain'], message: 'a strain (L, S or SS) for a rotifer culture' }

export const CultureSchema = z
  .object({
    id: IdSchema,
    ...cultureFields,
    startedAt: InstantSchema,
    endedAt: z.nullable(InstantSchema),
    endReason: z.nullable(z.string()),
    /** Null while it stands, and where nobody has said. */
    endCause: z.nullable(CultureEndCauseSchema),
    /** As last counted, less what was taken since, or by the estimate from a day after; null while nobody has said. */
    densityNow: z.nullable(z.object({ perMl: z.number(), countedAt: InstantSchema, isEstimated: z.boolean() })),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'Culture' })
export type Culture = z.infer<typeof CultureSchema>

const newCultureFields = {
  ...cultureFields,
  startedAt: z.optional(InstantSchema),
  /** Density just after inoculation, when known. */
  startDensityPerMl: z.optional(DensityPerMlSchema),
}
/** Shape only, for forms that build on it; what is posted is checked by `PostCultureSchema`. */
export const NewCultureSchema = z.strictObject(newCultureFields)
export const PostCultureSchema = NewCultureSchema.check(z.refine(hasStrainIfRotifer, strainMessage))
export type NewCulture = z.infer<typeof NewCultureSchema>
export const ChangeCultureSchema = z.strictObject({
  name: z.optional(NameSchema),
  strain: z.optional(z.nullable(RotiferStrainSchema)),
  volumeL: z.optional(VolumeLSchema),
  temperatureC: z.optional(TemperatureCSchema),
  salinity: z.optional(SalinitySchema),
  hasFilter: z.optional(z.boolean()),
  isBackup: z.optional(z.boolean()),
  concentrateId: z.optional(z.nullable(IdSchema)),
  airLine: z.optional(z.nullable(NameSchema)),
  shelf: z.optional(z.nullable(NameSchema)),
  tools: z.optional(z.nullable(NameSchema)),
  note: z.optional(NoteSchema),
  version: VersionSchema,
})

/** How often cultures crash here is learned from the cause; the reason is for people. */
export const EndCultureSchema = z.strictObject({
  ...EndSchema.shape,
  cause: z.optional(CultureEndCauseSchema),
})
export type EndCulture = z.infer<typeof EndCultureSchema>

/** Density behind and ahead of now, for the culture's chart. One that has ended has nothing ahead, and `behind` ends with it. */
export const CultureOutlookSchema = z
  .object({
    counts: z.array(
      z.object({
        factId: IdSchema,
        at: InstantSchema,
        densityPerMl: z.number(),
        lowerPerMl: z.number(),
        upperPerMl: z.number(),
        eggRatio: z.nullable(z.number()),
      }),
    ),
    harvests: z.array(z.object({ factId: IdSchema, at: InstantSchema, volumeL: z.number(), share: z.number() })),
    behind: z.array(z.object({ at: InstantSchema, p10: z.number(), p50: z.number(), p90: z.number() })),
    ahead: z.array(
      z.object({
        at: InstantSchema,
        p10: z.number(),
        p25: z.number(),
        p50: z.number(),
        p75: z.number(),
        p90: z.number(),
      }),
    ),
    /** Null when there are too few counts to say. */
    growthPerDay: z.nullable(z.number()),
    harvestSharePerDay: z.number(),
    sustainableSharePerDay: z.nullable(z.number()),
    sentence: z.string(),
  })
  .register(z.globalRegistry, { id: 'CultureOutlook' })
export type CultureOutlook = z.infer<typeof CultureOutlookSchema>
