import { z } from 'zod'
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
import { cultureKinds, rotiferStrains } from './vocabulary.ts'

export const CultureKindSchema = z.enum(cultureKinds)
export const RotiferStrainSchema = z.enum(rotiferStrains)

const cultureFields = {
  name: NameSchema,
  kind: CultureKindSchema,
  /** Required for rotifers. */
  strain: RotiferStrainSchema.nullable().default(null),
  /** Litres of water in it when full to its mark. */
  volumeL: VolumeLSchema,
  temperatureC: TemperatureCSchema,
  salinity: SalinitySchema,
  hasFilter: z.boolean().default(false),
  /** A backup is left alone: own tools, own air, own feed bottle, not harvested for larvae. */
  isBackup: z.boolean().default(false),
  concentrateId: IdSchema.nullable().default(null),
  parentCultureId: IdSchema.nullable().default(null),
  note: NoteSchema.default(''),
}
const hasStrainIfRotifer = (culture: { kind: string; strain?: string | null }) =>
  culture.kind !== 'rotifer' || culture.strain != null
const strainMessage = { path: ['strain'], message: 'a strain (L, S or SS) for a rotifer culture' }

export const CultureSchema = z
  .object({
    id: IdSchema,
    ...cultureFields,
    startedAt: InstantSchema,
    endedAt: InstantSchema.nullable(),
    endReason: z.string().nullable(),
    /** As last counted, less what was taken since, or by the estimate from a day after; null while nobody has said. */
    densityNow: z.object({ perMl: z.number(), countedAt: InstantSchema, isEstimated: z.boolean() }).nullable(),
    version: VersionSchema,
  })
  .meta({ id: 'Culture' })
export type Culture = z.infer<typeof CultureSchema>

const newCultureFields = {
  ...cultureFields,
  startedAt: InstantSchema.optional(),
  /** Density just after inoculation, when known. */
  startDensityPerMl: DensityPerMlSchema.optional(),
}
/** Shape only, for forms that build on it; what is posted is checked by `PostCultureSchema`. */
export const NewCultureSchema = z.strictObject(newCultureFields)
export const PostCultureSchema = NewCultureSchema.refine(hasStrainIfRotifer, strainMessage)
export type NewCulture = z.infer<typeof NewCultureSchema>
export const ChangeCultureSchema = z.strictObject({
  name: NameSchema.optional(),
  strain: RotiferStrainSchema.nullable().optional(),
  volumeL: VolumeLSchema.optional(),
  temperatureC: TemperatureCSchema.optional(),
  salinity: SalinitySchema.optional(),
  hasFilter: z.boolean().optional(),
  isBackup: z.boolean().optional(),
  concentrateId: IdSchema.nullable().optional(),
  note: NoteSchema.optional(),
  version: VersionSchema,
})

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
        eggRatio: z.number().nullable(),
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
    growthPerDay: z.number().nullable(),
    harvestSharePerDay: z.number(),
    sustainableSharePerDay: z.number().nullable(),
    sentence: z.string(),
  })
  .meta({ id: 'CultureOutlook' })
export type CultureOutlook = z.infer<typeof CultureOutlookSchema>
