import * as z from 'zod/mini'
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
import { atMost, withDefault } from './shapes.ts'
import { careKinds, foods } from './vocabulary.ts'

/** Larvae of one or more clutches that share a tank. Numbers are worked out from the facts. */
export const LarvalBatchSchema = z
  .object({
    id: IdSchema,
    name: NameSchema,
    species: SpeciesIdSchema,
    /** Where their eggs were. */
    care: z.enum(careKinds),
    tankId: IdSchema,
    clutchIds: z.array(IdSchema),
    /** Date whose lights-off began the hatch night. */
    hatchedOn: PlainDateSchema,
    ageDays: z.int(),
    /** By the book (hatched, losses seen, moves, head counts); the interval is null where nothing was sampled. */
    numberNow: z.nullable(
      z.object({ estimate: z.number(), lower: z.nullable(z.number()), upper: z.nullable(z.number()) }),
    ),
    note: NoteSchema,
    endedAt: z.nullable(InstantSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'LarvalBatch' })
export type LarvalBatch = z.infer<typeof LarvalBatchSchema>

export const NewLarvalBatchSchema = z.strictObject({
  name: z.optional(NameSchema),
  tankId: IdSchema,
  clutchIds: withDefault(z.array(IdSchema).check(atMost(10)), []),
  /** Needed when no clutch of this room is named (larvae bought in). */
  species: z.optional(SpeciesIdSchema),
  hatchedOn: PlainDateSchema,
  larvae: z.optional(HeadCountSchema),
  note: withDefault(NoteSchema, ''),
})
export type NewLarvalBatch = z.infer<typeof NewLarvalBatchSchema>
export const ChangeLarvalBatchSchema = z.strictObject({
  name: z.optional(NameSchema),
  tankId: z.optional(IdSchema),
  note: z.optional(NoteSchema),
  version: VersionSchema,
})

/** "This batch is fed from this culture", with its dates. */
export const FeedLinkSchema = z
  .object({
    id: IdSchema,
    batchId: IdSchema,
    cultureId: IdSchema,
    fromOn: PlainDateSchema,
    untilOn: z.nullable(PlainDateSchema),
    version: VersionSchema,
  })
  .register(z.globalRegistry, { id: 'FeedLink' })
export type FeedLink = z.infer<typeof FeedLinkSchema>
/** What a batch eats today of one culture or hatch vessel: worked out, whoever is linked to whom. */
export const FeedTodaySchema = z
  .object({ batchId: IdSchema, cultureId: IdSchema, food: z.enum(foods) })
  .register(z.globalRegistry, { id: 'FeedToday' })
export type FeedToday = z.infer<typeof FeedTodaySchema>

export const NewFeedLinkSchema = z.strictObject({ batchId: IdSchema, cultureId: IdSchema, fromOn: PlainDateSchema })
export const EndFeedLinkSchema = z.strictObject({ untilOn: PlainDateSchema, version: VersionSchema })

/** Why a thing is ended: a tank taken out of use, a culture, a pair, a batch or a group. */
export const EndSchema = z.strictObject({ reason: ReasonSchema, version: VersionSchema })
