import { z } from 'zod'
import { SpeciesIdSchema } from './pair.ts'
import {
  HeadCountSchema,
  IdSchema,
  InstantSchema,
  NameSchema,
  NoteSchema,
  PlainDateSchema,
  ReasonSchema,
  VersionSchema,
} from './primitives.ts'

/** Settled fish in grow-out. What they number is worked out from transfers in, losses, outcomes and head counts. */
export const JuvenileGroupSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    species: SpeciesIdSchema,
    tankId: IdSchema,
    fromBatchId: IdSchema.nullable(),
    settledOn: PlainDateSchema,
    ageDays: z.number().int(),
    numberNow: z.number().int().nullable(),
    lost: z.number().int(),
    placed: z.number().int(),
    kept: z.number().int(),
    culled: z.number().int(),
    note: NoteSchema,
    endedAt: InstantSchema.nullable(),
    version: VersionSchema,
  })
  .meta({ id: 'JuvenileGroup' })
export type JuvenileGroup = z.infer<typeof JuvenileGroupSchema>

/** Fish that leave a batch arrive here: with `fromBatchId` the number is a transfer out of that batch. */
export const NewJuvenileGroupSchema = z.strictObject({
  name: NameSchema.optional(),
  tankId: IdSchema,
  fromBatchId: IdSchema.optional(),
  /** Needed when the fish do not come from a batch of this room. */
  species: SpeciesIdSchema.optional(),
  settledOn: PlainDateSchema,
  number: HeadCountSchema.min(1),
  /** Why more were moved than the batch's book said; with it the book is corrected by the move. */
  beyondBook: ReasonSchema.optional(),
  note: NoteSchema.default(''),
})
export type NewJuvenileGroup = z.infer<typeof NewJuvenileGroupSchema>
export const ChangeJuvenileGroupSchema = z.strictObject({
  name: NameSchema.optional(),
  tankId: IdSchema.optional(),
  note: NoteSchema.optional(),
  version: VersionSchema,
})
