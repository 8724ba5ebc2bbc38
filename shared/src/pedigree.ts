import * as z from 'zod/mini'
import { IdSchema, PlainDateSchema, SubjectRefSchema } from './primitives.ts'
import { pairSexes } from './vocabulary.ts'

/** One fish of a pair, by the pair it spawns in. */
export const PedigreeFishSchema = z.object({
  pair: SubjectRefSchema,
  sex: z.enum(pairSexes),
  species: z.string(),
  isLiving: z.boolean(),
  /** The fish of another pair that it is; null where it spawns in this one alone, and in the first that was written down. */
  sameAs: z.nullable(z.object({ pair: SubjectRefSchema, sex: z.enum(pairSexes) })),
  /** The clutch that it grew up from; null for a founder: wild-caught, bought in, or nobody knows. */
  fromClutch: z.nullable(SubjectRefSchema),
  /** The pair that laid that clutch. */
  parents: z.nullable(SubjectRefSchema),
  /** 0 for founders and their young, 1 for young of those, and so on. */
  generation: z.int(),
  /** Wright's coefficient, 0 to 1. */
  inbreeding: z.number(),
})
export type PedigreeFish = z.infer<typeof PedigreeFishSchema>

export const PedigreePairSchema = z.object({
  pair: SubjectRefSchema,
  species: z.string(),
  isLiving: z.boolean(),
  generation: z.int(),
  formedOn: z.nullable(PlainDateSchema),
  /** Of the young of this pair. */
  offspringInbreeding: z.number(),
})

export const PedigreeSpeciesSchema = z.object({
  species: z.string(),
  founders: z.int(),
  /** Living fish that spawn, each once in however many pairs. */
  males: z.int(),
  females: z.int(),
  /** 4 Nm Nf / (Nm + Nf) of those, in animals; null while there is none. */
  effectiveSize: z.nullable(z.number()),
  /** Inbreeding that each generation of so few adds; null while there is none. */
  inbreedingPerGeneration: z.nullable(z.number()),
})

export const PedigreeSchema = z
  .object({
    fish: z.array(PedigreeFishSchema),
    pairs: z.array(PedigreePairSchema),
    bySpecies: z.array(PedigreeSpeciesSchema),
  })
  .register(z.globalRegistry, { id: 'Pedigree' })
export type Pedigree = z.infer<typeof PedigreeSchema>

type TwoFish = {
  femaleFromClutchId?: string | undefined
  femaleOfPairId?: string | undefined
  maleFromClutchId?: string | undefined
  maleOfPairId?: string | undefined
}
const eachOnce = z.refine<TwoFish>(
  ({ femaleFromClutchId, femaleOfPairId, maleFromClutchId, maleOfPairId }) =>
    (femaleFromClutchId === undefined || femaleOfPairId === undefined) &&
    (maleFromClutchId === undefined || maleOfPairId === undefined),
  'each fish as the young of a clutch, or as one of a pair, and not both',
)

/**
 * Two fish that may become a pair: each the young of a clutch, or a fish of a pair, or, with neither, one of unknown
 * descent.
 */
export const PairToBeQuerySchema = z
  .strictObject({
    femaleFromClutchId: z.optional(IdSchema),
    femaleOfPairId: z.optional(IdSchema),
    maleFromClutchId: z.optional(IdSchema),
    maleOfPairId: z.optional(IdSchema),
  })
  .check(eachOnce)
export type PairToBeQuery = z.infer<typeof PairToBeQuerySchema>

export const PairToBeSchema = z
  .object({
    /** Of the young that they would have, 0 to 1. */
    offspringInbreeding: z.number(),
    /** Twice their kinship: 0.5 for brother and sister of unrelated parents. */
    relationship: z.number(),
    /** Fish of unknown descent are taken as related to nobody. */
    hasUnknownParent: z.boolean(),
  })
  .register(z.globalRegistry, { id: 'PairToBe' })
export type PairToBe = z.infer<typeof PairToBeSchema>
