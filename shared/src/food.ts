import * as z from 'zod/mini'
import { NightSchema } from './clutch.ts'
import { type Id, IdSchema, InstantSchema, type PlainDate, PlainDateSchema, VolumeLSchema } from './primitives.ts'
import { aboveZero, atLeast, atMost, wholeBetween } from './shapes.ts'
import { firstFoods } from './vocabulary.ts'

// More than a small room ever holds; wider values are slips of the thumb. common practice
const AnimalsSchema = aboveZero(1e10).register(z.globalRegistry, { description: 'live animals' })

/** What a room may do so that food lasts. A clutch that is left with its parents is decided on like any other. */
const cures = [
  /** Of a clutch once it hatches, or of a batch. */
  z.strictObject({ kind: z.literal('keep_larvae'), subjectId: IdSchema, larvae: wholeBetween(1, 100_000) }),
  /** Nothing is thinned that larvae do not eat. */
  z.strictObject({ kind: z.literal('thin_less') }),
  /** On a morning, with so many animals out of a culture that stands. */
  z.strictObject({
    kind: z.literal('start_culture'),
    cultureId: IdSchema,
    volumeL: VolumeLSchema,
    animals: AnimalsSchema,
    onDate: PlainDateSchema,
  }),
  z.strictObject({ kind: z.literal('buy_in'), animals: AnimalsSchema, onDate: PlainDateSchema }),
  /** Rotifers end two days after the first nauplii. */
  z.strictObject({ kind: z.literal('artemia_sooner') }),
  /** Backups may give what no other culture can. */
  z.strictObject({ kind: z.literal('use_backups') }),
  /** The chilled reserve may give what no culture can. */
  z.strictObject({ kind: z.literal('use_reserve') }),
] as const

export const CureChangeSchema = z.discriminatedUnion('kind', cures)
export type CureChange = z.infer<typeof CureChangeSchema>

/** One thing done, or happening, that a plan of the food may be asked about. */
export const FoodChangeSchema = z.discriminatedUnion('kind', [
  /** The pair lays a clutch tonight, and it is raised. */
  z.strictObject({ kind: z.literal('pair_spawns'), pairId: IdSchema }),
  /** One more pair lays as this one does, from some day of its interval on, and its clutches are raised as often. */
  z.strictObject({ kind: z.literal('another_pair'), likePairId: IdSchema }),
  /** Nothing lives in it from tomorrow on. */
  z.strictObject({ kind: z.literal('culture_crashes'), cultureId: IdSchema }),
  /** From tomorrow on somebody else feeds, and gives the cultures half rations. */
  z.strictObject({ kind: z.literal('away'), days: wholeBetween(1, 14) }),
  z.strictObject({ kind: z.literal('leave_clutch'), clutchId: IdSchema }),
  ...cures,
])
export type FoodChange = z.infer<typeof FoodChangeSchema>

const BandSchema = z.object({ p10: z.number(), p50: z.number(), p90: z.number() })

/** What cultures may share and be lost of together. */
export const crashCauses = ['air', 'shelf', 'tools', 'bottle', 'parent'] as const

/** Why a culture gives what it gives. */
export const cultureStandings = [
  'gives',
  'too_young',
  'backup',
  'in_doubt',
  'falling',
  'not_counted',
  'chilled',
] as const

export const FoodCultureSchema = z.object({
  /** A culture's id, or what a culture that does not stand yet is called in this plan. */
  id: z.string(),
  /** Null for a culture that a change would start or buy in. */
  cultureId: z.nullable(IdSchema),
  name: z.string(),
  volumeL: z.number(),
  standing: z.enum(cultureStandings),
  /** Names of others that would go with it: by bottle, by parent, by air and tools. */
  sharesCausesWith: z.array(z.object({ cultureId: IdSchema, causes: z.array(z.enum(crashCauses)) })),
})

export const eaterKinds = ['larval_batch', 'clutch', 'spawning'] as const

/** Who will want rotifers: a batch, a clutch that is to hatch, or a clutch that a pair is to lay. */
export const FoodEaterSchema = z.object({
  id: z.string(),
  kind: z.enum(eaterKinds),
  /** The batch, the clutch or the pair. */
  subjectId: IdSchema,
  name: z.string(),
  /** Expected on its first day of food, or today; null while nobody has said. */
  larvae: z.nullable(z.number()),
  /** Nights on which it may hatch; empty for a batch. */
  nights: z.array(NightSchema),
})

/** Nauplii kept cold, in a cone that was started, or of cysts that today's list asks for. */
export const hatchStandings = ['kept', 'under_way', 'asked'] as const

/** A hatch of Artemia that batches may eat of. */
export const FoodHatchSchema = z.object({
  id: z.string(),
  cultureId: IdSchema,
  name: z.string(),
  standing: z.enum(hatchStandings),
  readyAt: InstantSchema,
  /** So long its nauplii are food, in the cold. */
  goodUntil: InstantSchema,
  nauplii: z.number(),
})

const ArtemiaDaySchema = z.object({
  gives: z.array(z.object({ hatchId: z.string(), batchId: IdSchema, nauplii: z.number() })),
  batches: z.array(z.object({ batchId: IdSchema, name: z.string(), wanted: z.number(), got: z.number() })),
  /** What no hatch gives: still to be hatched. */
  toHatch: z.number(),
})

export const FoodDaySchema = z.object({
  date: PlainDateSchema,
  gives: z.array(z.object({ cultureId: z.string(), eaterId: z.string(), volumeL: z.number(), animals: z.number() })),
  cultures: z.array(z.object({ id: z.string(), densityPerMl: z.number(), fedL: z.number(), spareL: z.number() })),
  eaters: z.array(z.object({ id: z.string(), wanted: z.number(), got: z.number(), chanceShort: z.number() })),
  /** Live rotifers that all want, and that all cultures could give. */
  wanted: BandSchema,
  couldGive: BandSchema,
  /** That at least one gets less than nine tenths of what it wants. */
  chanceShort: z.number(),
  /** Live rotifers missing. */
  short: z.object({ mean: z.number(), p90: z.number() }),
  /** Newly hatched Artemia that the batches of today will want. */
  nauplii: z.number(),
  /** Who eats of which hatch; plans that were kept before they knew of hatches do not say. */
  artemia: z.optional(ArtemiaDaySchema),
})

/** The first day with a chance of a fifth or more of falling short. */
export const FoodWorrySchema = z.object({
  date: PlainDateSchema,
  chanceShort: z.number(),
  /** Who is likeliest to fall short on it. */
  eaterIds: z.array(z.string()),
  /** Live rotifers missing, over all futures. */
  shortMean: z.number(),
})

export const FoodOutlookSchema = z.object({
  days: z.array(FoodDaySchema),
  cultures: z.array(FoodCultureSchema),
  eaters: z.array(FoodEaterSchema),
  /** In the order in which they spoil; plans that were kept before they knew of hatches do not say. */
  hatches: z.optional(z.array(FoodHatchSchema)),
  /** Pairs, and whether the plan can say what a clutch laid tonight would want; plans that were kept before do not say. */
  pairs: z.optional(
    z.array(
      z.object({
        pairId: IdSchema,
        name: z.string(),
        firstFood: z.enum(firstFoods),
        eatsRotifers: z.boolean(),
        isPlanned: z.boolean(),
      }),
    ),
  ),
  worry: z.nullable(FoodWorrySchema),
  /** Live rotifers missing over all days. */
  shortTotal: z.number(),
  /** Ids of backups that the plan asks. */
  backupsUsed: z.array(z.string()),
  /** What keeps something out of the plan, each a sentence with what to do. */
  gaps: z.array(z.string()),
})
export type FoodOutlook = z.infer<typeof FoodOutlookSchema>

/** A cure with what it makes of the days ahead, as tried. */
export const FoodCureSchema = z.object({
  change: FoodChangeSchema,
  worry: z.nullable(FoodWorrySchema),
  shortTotal: z.number(),
  days: z.array(
    z.object({ date: PlainDateSchema, wanted: BandSchema, couldGive: BandSchema, chanceShort: z.number() }),
  ),
})
export type FoodCure = z.infer<typeof FoodCureSchema>

export const FoodAnswerSchema = z.object({ outlook: FoodOutlookSchema, cures: z.array(FoodCureSchema) })
export type FoodAnswer = z.infer<typeof FoodAnswerSchema>

/** What a plan says of one day, for the rules that ask for it: who eats from which culture, and what goes of each. */
export type FoodOrders = {
  date: PlainDate
  batches: {
    batchId: Id
    /** Of what it wants, the share that the plan gives it; 1 where there is enough. */
    share: number
    /** Who gives it, most first. */
    from: { cultureId: Id; volumeL: number; animals: number }[]
    /** Live rotifers that it gets of the chilled reserve; plans that were kept before there was one did not say. */
    chilled?: number
  }[]
  cultures: { cultureId: Id; fedL: number; spareL: number }[]
}

/** The room's last plan of its food; it is worked out after the room has changed, and nobody waits for it. */
export const FoodViewSchema = z
  .object({
    plan: z.nullable(
      z.object({
        madeAt: InstantSchema,
        revision: z.int(),
        /** Something has changed since: the next plan is being worked out. */
        isStale: z.boolean(),
        ...FoodAnswerSchema.shape,
      }),
    ),
    /** What the room does already so that food lasts, oldest first; the plan counts on it. */
    underWay: z.array(z.object({ factId: IdSchema, at: InstantSchema, change: CureChangeSchema })),
  })
  .register(z.globalRegistry, { id: 'FoodView' })
export type FoodView = z.infer<typeof FoodViewSchema>

export const WhatIfSchema = z.strictObject({
  changes: z.array(FoodChangeSchema).check(atLeast(1), atMost(6)),
})
export type WhatIf = z.infer<typeof WhatIfSchema>

export const FoodWhatIfSchema = z
  .object({ before: FoodOutlookSchema, after: FoodOutlookSchema })
  .register(z.globalRegistry, { id: 'FoodWhatIf' })
export type FoodWhatIf = z.infer<typeof FoodWhatIfSchema>
