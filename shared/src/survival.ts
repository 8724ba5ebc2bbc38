import * as z from 'zod/mini'
import { FactSchema } from './facts/index.ts'
import { IdSchema, InstantSchema, PlainDateSchema, SubjectRefSchema } from './primitives.ts'
import { withDefault } from './shapes.ts'
import {
  careKinds,
  comparedBy,
  comparisonConclusions,
  foods,
  leftOutReasons,
  outcomes,
  protocolParts,
  survivalStageStatuses,
  survivalStages,
} from './vocabulary.ts'

/** A share with its 95 % interval and the number of animals it is of; not whole where some left on the way. */
export const SurvivalShareSchema = z.object({
  share: z.number(),
  lower: z.number(),
  upper: z.number(),
  of: z.number(),
})
export type SurvivalShare = z.infer<typeof SurvivalShareSchema>

const NameOfStageSchema = z.enum(survivalStages)

export const SurvivalStageSchema = z.object({
  stage: NameOfStageSchema,
  status: z.enum(survivalStageStatuses),
  on: z.nullable(PlainDateSchema),
  /** Days since it hatched (day 0 is the morning after); null where the day is not known, and before it. */
  ageDays: z.nullable(z.int()),
  /** At least so many reached it, and at most so many: one number where it was counted, null where nobody can know. */
  atLeast: z.nullable(z.int()),
  atMost: z.nullable(z.int()),
  /** How far the counting itself may be off, 95 %; null where nothing was counted then. */
  interval: z.nullable(z.object({ lower: z.int(), upper: z.int() })),
  /** The stage before for which a number is known; the share and the lost are of that one. */
  fromStage: z.nullable(NameOfStageSchema),
  lost: z.nullable(z.int()),
  share: z.nullable(SurvivalShareSchema),
  ofFirst: z.nullable(SurvivalShareSchema),
  /** More were counted here than there can have been: one of the two numbers is off. */
  isAboveBook: z.boolean(),
})
export type SurvivalStage = z.infer<typeof SurvivalStageSchema>

/** Dead of one cause, as it was written down; `cause` is null where nobody said. */
export const LossesByCauseSchema = z.object({ cause: z.nullable(z.string()), number: z.int() })

/** One clutch, or several that hatched into one tank, whose young nobody can tell apart. */
export const SurvivalRowSchema = z
  .object({
    id: IdSchema,
    clutches: z.array(SubjectRefSchema),
    pairs: z.array(SubjectRefSchema),
    species: z.string(),
    care: z.enum(careKinds),
    /** Tanks that its larvae were in during their first days. */
    tanks: z.array(SubjectRefSchema),
    /** Rotifer and copepod cultures that it ate from in its first days. */
    cultures: z.array(SubjectRefSchema),
    /** What it was fed in those days, as far as anybody wrote it down. */
    protocol: z.array(z.enum(protocolParts)),
    spawnedOn: PlainDateSchema,
    bornOn: z.nullable(PlainDateSchema),
    stages: z.array(SurvivalStageSchema),
    losses: z.array(LossesByCauseSchema),
    /** Missing at a count, and not seen dead. */
    missing: z.int(),
    numberNow: z.nullable(z.int()),
    /** When its young were put together with those of others, and could be followed no further. */
    mixedOn: z.nullable(PlainDateSchema),
  })
  .register(z.globalRegistry, { id: 'SurvivalRow' })
export type SurvivalRow = z.infer<typeof SurvivalRowSchema>

const range = { from: z.optional(PlainDateSchema), to: z.optional(PlainDateSchema) }
type Range = { from?: string | undefined; to?: string | undefined }
const inOrder = z.refine<Range>(({ from, to }) => from === undefined || to === undefined || from <= to, {
  path: ['to'],
  message: 'a date that is not before the first',
})

/** Clutches laid between two dates, both included. */
export const SurvivalQuerySchema = z.strictObject(range).check(inOrder)
export type SurvivalQuery = z.infer<typeof SurvivalQuerySchema>

export const SurvivalReviewSchema = z
  .object({ rows: z.array(SurvivalRowSchema) })
  .register(z.globalRegistry, { id: 'SurvivalReview' })
export type SurvivalReview = z.infer<typeof SurvivalReviewSchema>

export const CompareQuerySchema = z.strictObject({ by: z.enum(comparedBy), ...range }).check(inOrder)
export type CompareQuery = z.infer<typeof CompareQuerySchema>

/** A file for a spreadsheet: with a comma as decimal mark its cells are parted by semicolons. */
export const SurvivalFileQuerySchema = z
  .strictObject({ ...range, decimal: withDefault(z.enum(['point', 'comma']), 'point') })
  .check(inOrder)
export type SurvivalFileQuery = z.infer<typeof SurvivalFileQuerySchema>

/** Share alive since the hatch, after a day of age on which some died, with Greenwood's band. */
export const CurvePointSchema = z.object({
  ageDays: z.number(),
  atRisk: z.number(),
  deaths: z.number(),
  share: z.number(),
  lower: z.number(),
  upper: z.number(),
})

export const ComparedGroupSchema = z.object({
  key: z.string(),
  name: z.string(),
  clutches: z.int(),
  animals: z.int(),
  deaths: z.int(),
  curve: z.array(CurvePointSchema),
  /** Last day of age on which any were under watch. */
  followedToDay: z.number(),
  /** Under watch on each of the comparison's days. */
  atRisk: z.array(z.number()),
  /** Days of age by which half had died; null where more than half lived on. */
  medianDays: z.nullable(z.number()),
  deathsAgainstExpected: z.nullable(z.number()),
})
export type ComparedGroup = z.infer<typeof ComparedGroupSchema>

export const SurvivalComparisonSchema = z
  .object({
    by: z.enum(comparedBy),
    /** Where the eggs of all these clutches were: young hatch, or are released. */
    cares: z.array(z.enum(careKinds)),
    groups: z.array(ComparedGroupSchema),
    /** Days of age for which numbers at risk are told. */
    days: z.array(z.number()),
    conclusion: z.enum(comparisonConclusions),
    /** Keys of the groups with fewest and most deaths against those expected; null unless groups differ. */
    best: z.nullable(z.string()),
    worst: z.nullable(z.string()),
    hasFewDeaths: z.boolean(),
    /** Log-rank test of single animals. */
    byAnimal: z.nullable(z.object({ chiSquare: z.number(), degreesOfFreedom: z.int(), pValue: z.number() })),
    /** The same with the clutch as the unit. */
    byClutch: z.nullable(
      z.object({ pValue: z.number(), smallestPValue: z.number(), arrangements: z.int(), isExact: z.boolean() }),
    ),
    leftOut: z.array(z.object({ reason: z.enum(leftOutReasons), clutches: z.int() })),
  })
  .register(z.globalRegistry, { id: 'SurvivalComparison' })
export type SurvivalComparison = z.infer<typeof SurvivalComparisonSchema>

/** What it ate of one food from one culture, in sum. */
export const LifeMealsSchema = z.object({
  food: z.enum(foods),
  culture: z.nullable(SubjectRefSchema),
  firstOn: PlainDateSchema,
  lastOn: PlainDateSchema,
  times: z.int(),
})

/** Animals that died or left on a date. */
export const LifeDepartureSchema = z.object({
  on: PlainDateSchema,
  ageDays: z.nullable(z.int()),
  kind: z.enum(['loss', 'moved', 'mixed', ...outcomes]),
  number: z.int(),
  cause: z.nullable(z.string()),
})

/** When a stage should come by the warmth of its tank: the eight in ten likeliest days. */
export const LifeExpectedSchema = z.object({
  stage: NameOfStageSchema,
  from: PlainDateSchema,
  to: PlainDateSchema,
})

export const ClutchLifeSchema = z
  .object({
    row: SurvivalRowSchema,
    today: PlainDateSchema,
    expected: z.array(LifeExpectedSchema),
    /** How many there were at the end of each day from the hatch on. */
    numbers: z.array(
      z.object({
        on: PlainDateSchema,
        ageDays: z.int(),
        atLeast: z.nullable(z.int()),
        atMost: z.nullable(z.int()),
        isCounted: z.boolean(),
      }),
    ),
    departures: z.array(LifeDepartureSchema),
    meals: z.array(LifeMealsSchema),
    /** Measured in the tanks it was in, oldest first. */
    temperatures: z.array(z.object({ at: InstantSchema, temperatureC: z.number(), tankId: IdSchema })),
    /** Set points of the tanks it was in, for days on which nothing was measured. */
    setPoints: z.array(z.object({ tank: SubjectRefSchema, temperatureC: z.number() })),
    /** What happened, oldest first; feedings and water tests stand above. */
    events: z.array(FactSchema),
    vessels: z.array(SubjectRefSchema),
  })
  .register(z.globalRegistry, { id: 'ClutchLife' })
export type ClutchLife = z.infer<typeof ClutchLifeSchema>
