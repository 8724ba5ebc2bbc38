import * as z from 'zod/mini'
import { SpeciesIdSchema } from './pair.ts'
import {
  DeformedSchema,
  HeadCountSchema,
  IdSchema,
  InstantSchema,
  LengthMmSchema,
  NameSchema,
  NoteSchema,
  PlainDateSchema,
  ReasonSchema,
  VersionSchema,
} from './primitives.ts'
import { withDefault } from './shapes.ts'

/** Settled fish in grow-out. What they number is worked out from transfers in, losses, outcomes and head counts. */
export const JuvenileGroupSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    species: SpeciesIdSchema,
    tankId: IdSchema,
    fromBatchId: z.nullable(IdSchema),
    settledOn: PlainDateSchema,
    ageDays: z.int(),
    numberNow: z.nullable(z.int()),
    lost: z.int(),
    placed: z.int(),
    kept: z.int(),
    culled: z.int(),
    note: NoteSchema,
    endedAt: z.nullable(InstantSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'JuvenileGroup' })
export type JuvenileGroup = z.infer<typeof JuvenileGroupSchema>

/** Fish that leave a batch arrive here: with `fromBatchId` the number is a transfer out of that batch. */
export const NewJuvenileGroupSchema = z.strictObject({
  name: z.optional(NameSchema),
  tankId: IdSchema,
  fromBatchId: z.optional(IdSchema),
  /** Needed when the fish do not come from a batch of this room. */
  species: z.optional(SpeciesIdSchema),
  settledOn: PlainDateSchema,
  /** Of fish out of a batch always; of others where it is known. */
  number: z.optional(HeadCountSchema.check(z.minimum(1))),
  lengthMm: z.optional(LengthMmSchema),
  deformed: z.optional(DeformedSchema),
  /** Why more were moved than the batch's book said; with it the book is corrected by the move. */
  beyondBook: z.optional(ReasonSchema),
  note: withDefault(NoteSchema, ''),
})
export type NewJuvenileGroup = z.infer<typeof NewJuvenileGroupSchema>
export const ChangeJuvenileGroupSchema = z.strictObject({
  name: z.optional(NameSchema),
  tankId: z.optional(IdSchema),
  note: z.optional(NoteSchema),
  version: VersionSchema,
})
