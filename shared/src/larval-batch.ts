import { z } from 'zod'
import { SpeciesIdSchema } from './pair.ts'
import {
  HeadCountSchema,
  IdSchema,
  InstantSchema,
  NameSchema,
  NoteSchema,
  PlainDateSchema,
  VersionSchema,
} from './primitives.ts'

/** Larvae of one or more clutches that share a tank. Numbers are worked out from the facts. */
export const LarvalBatchSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    species: SpeciesIdSchema,
    tankId: IdSchema,
    clutchIds: z.array(IdSchema),
    /** Date whose lights-off began the hatch night. */
    hatchedOn: PlainDateSchema,
    ageDays: z.number().int(),
    /** By the book (hatched, losses seen, moves, head counts); the interval is null where nothing was sampled. */
    numberNow: z
      .object({ estimate: z.number(), lower: z.number().nullable(), upper: z.number().nullable() })
      .nullable(),
    note: NoteSchema,
    endedAt: InstantSchema.nullable(),
    version: VersionSchema,
  })
  .meta({ id: 'LarvalBatch' })
export type LarvalBatch = z.infer<typeof LarvalBatchSchema>

export const NewLarvalBatchSchema = z.strictObject({
  name: NameSchema.optional(),
  tankId: IdSchema,
  clutchIds: z.array(IdSchema).max(10).default([]),
  /** Needed when no clutch of this room is named (larvae bought in). */
  species: SpeciesIdSchema.optional(),
  hatchedOn: PlainDateSchema,
  larvae: HeadCountSchema.optional(),
  note: NoteSchema.default(''),
})
export type NewLarvalBatch = z.infer<typeof NewLarvalBatchSchema>
export const ChangeLarvalBatchSchema = z.strictObject({
  name: NameSchema.optional(),
  tankId: IdSchema.optional(),
  note: NoteSchema.optional(),
  version: VersionSchema,
})

/** "This batch is fed from this culture", with its dates. */
export const FeedLinkSchema = z
  .object({
    id: IdSchema,
    batchId: IdSchema,
    cultureId: IdSchema,
    fromOn: PlainDateSchema,
    untilOn: PlainDateSchema.nullable(),
    version: VersionSchema,
  })
  .meta({ id: 'FeedLink' })
export type FeedLink = z.infer<typeof FeedLinkSchema>
export const NewFeedLinkSchema = z.strictObject({ batchId: IdSchema, cultureId: IdSchema, fromOn: PlainDateSchema })
export const EndFeedLinkSchema = z.strictObject({ untilOn: PlainDateSchema, version: VersionSchema })

export const EndSchema = z.strictObject({ reason: z.string().trim().min(3).max(500), version: VersionSchema })
