import { z } from 'zod'
import { IdSchema, InstantSchema, NameSchema, NoteSchema, PlainDateSchema, VersionSchema } from './primitives.ts'

/** Id of a species profile, such as amphiprion-ocellaris. */
export const SpeciesIdSchema = z.string().regex(/^[a-z][a-z0-9-]{2,59}$/, 'a species id such as amphiprion-ocellaris')

const pairFields = {
  name: NameSchema,
  species: SpeciesIdSchema,
  tankId: IdSchema,
  nestSite: z.string().trim().max(120).default(''),
  formedOn: PlainDateSchema.nullable().default(null),
  isResting: z.boolean().default(false),
  note: NoteSchema.default(''),
}
export const PairSchema = z
  .object({ id: IdSchema, ...pairFields, endedAt: InstantSchema.nullable(), version: VersionSchema })
  .meta({ id: 'Pair' })
export type Pair = z.infer<typeof PairSchema>
export const NewPairSchema = z.strictObject(pairFields)
export type NewPair = z.infer<typeof NewPairSchema>
export const ChangePairSchema = z.strictObject({
  name: NameSchema.optional(),
  tankId: IdSchema.optional(),
  nestSite: z.string().trim().max(120).optional(),
  formedOn: PlainDateSchema.nullable().optional(),
  isResting: z.boolean().optional(),
  note: NoteSchema.optional(),
  version: VersionSchema,
})
