import { z } from 'zod'
import {
  DensityPerMlSchema,
  HeadCountSchema,
  IdSchema,
  InstantSchema,
  NoteSchema,
  PhSchema,
  ReasonSchema,
  SalinitySchema,
  ShareSchema,
  TemperatureCSchema,
  VolumeLSchema,
} from './primitives.ts'
import {
  careActs,
  clutchIntents,
  countTargets,
  eggStages,
  foods,
  harvestDestinations,
  outcomes,
  signs,
  subjectKinds,
} from './vocabulary.ts'

/**
 * Why more left than the book said was there. With it the book is corrected by the fact itself; without it the fact is
 * answered with needs_confirmation. To count first is the other way out.
 */
const BeyondBookSchema = ReasonSchema.optional()

/**
 * A sampled count, never a bare number: what was counted in each replicate, the volume of each, the dilution.
 * For heads (larvae, eggs, juveniles counted one by one) `volumeMl` is left out.
 */
export const CountDataSchema = z.strictObject({
  of: z.enum(countTargets),
  animals: z.array(z.number().int().min(0).max(100_000)).min(1).max(20),
  volumeMl: z.number().gt(0).max(10_000).optional(),
  dilution: z.number().min(1).max(10_000).default(1),
  /** Eggs seen on the females looked at, for the egg ratio. */
  eggs: z.number().int().min(0).max(100_000).optional(),
  females: z.number().int().min(1).max(100_000).optional(),
})
export type CountData = z.infer<typeof CountDataSchema>

export const HarvestPartSchema = z.strictObject({
  to: z.enum(harvestDestinations),
  subjectId: IdSchema.optional(),
  volumeL: z.number().gt(0).max(20_000),
})
/** Litres taken from a culture and where each litre went; the parts add up to the whole. */
export const HarvestDataSchema = z
  .strictObject({ volumeL: VolumeLSchema, parts: z.array(HarvestPartSchema).min(1).max(20) })
  .refine(
    (harvest) => Math.abs(harvest.parts.reduce((sum, part) => sum + part.volumeL, 0) - harvest.volumeL) < 0.0051,
    {
      path: ['parts'],
      message: 'parts that add up to the litres taken',
    },
  )
  .refine(
    (harvest) =>
      harvest.parts.every(
        (part) => (part.to === 'larval_batch' || part.to === 'culture') === (part.subjectId !== undefined),
      ),
    {
      path: ['parts'],
      message: 'a subjectId for each part that went to a larval batch or a culture, and for no other',
    },
  )
export type HarvestData = z.infer<typeof HarvestDataSchema>

export const FeedingDataSchema = z.strictObject({
  food: z.enum(foods),
  concentrateId: IdSchema.optional(),
  fromCultureId: IdSchema.optional(),
  amountMl: z.number().gt(0).max(20_000).optional(),
  amountG: z.number().gt(0).max(20_000).optional(),
  animals: z.number().min(0).max(1e12).optional(),
  note: NoteSchema.optional(),
})
export type FeedingData = z.infer<typeof FeedingDataSchema>

/** Animals put into a culture, from a parent or bought in. */
export const InoculationDataSchema = z.strictObject({
  densityPerMl: DensityPerMlSchema.optional(),
  animals: z.number().min(0).max(1e12).optional(),
  fromCultureId: IdSchema.optional(),
})

/** Water taken out and put in; a top-up after evaporation takes nothing out and has salinity 0. */
export const WaterChangeDataSchema = z.strictObject({
  removedL: z.number().min(0).max(20_000),
  addedL: z.number().min(0).max(20_000),
  salinity: SalinitySchema.optional(),
  temperatureC: TemperatureCSchema.optional(),
})
export type WaterChangeData = z.infer<typeof WaterChangeDataSchema>

/** Concentrations are mg/L; ammonia, nitrite and nitrate are as nitrogen (N), total ammonia as total. */
export const WaterTestDataSchema = z
  .strictObject({
    temperatureC: TemperatureCSchema.optional(),
    salinity: SalinitySchema.optional(),
    pH: PhSchema.optional(),
    totalAmmoniaNMgPerL: z.number().min(0).max(100).optional(),
    nitriteNMgPerL: z.number().min(0).max(100).optional(),
    nitrateNMgPerL: z.number().min(0).max(1000).optional(),
    oxygenMgPerL: z.number().min(0).max(30).optional(),
  })
  .refine((test) => Object.values(test).some((value) => value !== undefined), 'at least one measured value')
export type WaterTestData = z.infer<typeof WaterTestDataSchema>

export const LossDataSchema = z.strictObject({
  number: z.number().int().min(1).max(1_000_000),
  of: z.enum(['eggs', 'larvae', 'juveniles', 'adults', 'culture']),
  cause: NoteSchema.optional(),
  beyondBook: BeyondBookSchema,
})

/** Animals that leave one subject and arrive at another. */
export const TransferDataSchema = z.strictObject({
  number: HeadCountSchema,
  toSubjectId: IdSchema,
  note: NoteSchema.optional(),
  beyondBook: BeyondBookSchema,
})

export const ObservationDataSchema = z
  .strictObject({
    signs: z.array(z.enum(signs)).max(20).default([]),
    eggStage: z.enum(eggStages).optional(),
    note: NoteSchema.optional(),
  })
  .refine(
    (seen) => seen.signs.length > 0 || seen.eggStage !== undefined || (seen.note ?? '') !== '',
    'a sign, an egg colour or a note',
  )
export type ObservationData = z.infer<typeof ObservationDataSchema>

export const CareDataSchema = z.strictObject({
  act: z.enum(careActs),
  litres: VolumeLSchema.optional(),
  saltG: z.number().min(0).max(1e6).optional(),
  note: NoteSchema.optional(),
})

export const SpawningDataSchema = z.strictObject({ eggs: HeadCountSchema.optional() })

/** A hatch seen the morning after: how much of the clutch, how many larvae, and into which batch. */
export const HatchDataSchema = z.strictObject({
  hatchedOn: z.iso.date(),
  share: ShareSchema.optional(),
  larvae: HeadCountSchema.optional(),
  batchId: IdSchema.optional(),
})

/** A treatment as written by whoever prescribed it; nothing is suggested here. */
export const TreatmentDataSchema = z.strictObject({
  product: z.string().trim().min(1, 'the product as it is written').max(200),
  dose: z.string().trim().min(1, 'the dose as it is written').max(200),
  prescribedBy: z.string().trim().min(1, 'who prescribed it').max(200),
  note: NoteSchema.optional(),
})

/** Fish that were placed, kept for breeding or culled: they leave the group and are counted, not lost. */
export const OutcomeDataSchema = z.strictObject({
  outcome: z.enum(outcomes),
  number: z.number().int().min(1).max(1_000_000),
  note: NoteSchema.optional(),
  beyondBook: BeyondBookSchema,
})

/** What is meant with a clutch from now on; the latest one that stands counts. */
export const DecisionDataSchema = z.strictObject({ intent: z.enum(clutchIntents) })

/** One schema for each kind of fact; the only place that says what a kind may hold. */
export const factDataSchemas = {
  count: CountDataSchema,
  harvest: HarvestDataSchema,
  feeding: FeedingDataSchema,
  inoculation: InoculationDataSchema,
  water_change: WaterChangeDataSchema,
  water_test: WaterTestDataSchema,
  loss: LossDataSchema,
  transfer: TransferDataSchema,
  observation: ObservationDataSchema,
  care: CareDataSchema,
  spawning: SpawningDataSchema,
  hatch: HatchDataSchema,
  treatment: TreatmentDataSchema,
  outcome: OutcomeDataSchema,
  decision: DecisionDataSchema,
} as const satisfies Record<import('./vocabulary.ts').FactKind, z.ZodType>

const factBase = {
  id: IdSchema,
  subjectId: IdSchema,
  subjectKind: z.enum(subjectKinds),
  /** When it was done or seen. */
  at: InstantSchema,
  receivedAt: InstantSchema,
  recordedByName: z.string(),
  taskId: IdSchema.nullable(),
  struckAt: InstantSchema.nullable(),
  struckByName: z.string().nullable(),
  struckReason: z.string().nullable(),
  revision: z.number().int(),
}
const factOf = <K extends keyof typeof factDataSchemas>(kind: K) =>
  z.object({ ...factBase, kind: z.literal(kind), data: factDataSchemas[kind] })

export const FactSchema = z
  .discriminatedUnion('kind', [
    factOf('count'),
    factOf('harvest'),
    factOf('feeding'),
    factOf('inoculation'),
    factOf('water_change'),
    factOf('water_test'),
    factOf('loss'),
    factOf('transfer'),
    factOf('observation'),
    factOf('care'),
    factOf('spawning'),
    factOf('hatch'),
    factOf('treatment'),
    factOf('outcome'),
    factOf('decision'),
  ])
  .meta({ id: 'Fact' })
export type Fact = z.infer<typeof FactSchema>
export type FactOf<K extends Fact['kind']> = Extract<Fact, { kind: K }>

const newFactOf = <K extends keyof typeof factDataSchemas>(kind: K) =>
  z.strictObject({
    kind: z.literal(kind),
    subjectId: IdSchema,
    at: InstantSchema.optional(),
    data: factDataSchemas[kind],
  })

/** What a person posts. Spawnings, hatches and decisions come with their clutch or batch, through those routes. */
export const NewFactSchema = z.discriminatedUnion('kind', [
  newFactOf('count'),
  newFactOf('harvest'),
  newFactOf('feeding'),
  newFactOf('inoculation'),
  newFactOf('water_change'),
  newFactOf('water_test'),
  newFactOf('loss'),
  newFactOf('transfer'),
  newFactOf('observation'),
  newFactOf('care'),
  newFactOf('treatment'),
  newFactOf('outcome'),
])
export type NewFact = z.infer<typeof NewFactSchema>

export const StrikeFactSchema = z.strictObject({ reason: ReasonSchema })

export const FactQuerySchema = z.strictObject({
  subjectId: IdSchema.optional(),
  kind: z
    .enum(Object.keys(factDataSchemas) as [keyof typeof factDataSchemas, ...(keyof typeof factDataSchemas)[]])
    .optional(),
  before: InstantSchema.optional(),
  limit: z.coerce.number().int().min(1).max(500).default(100),
})
export const FactPageSchema = z
  .object({ facts: z.array(FactSchema), nextBefore: InstantSchema.nullable() })
  .meta({ id: 'FactPage' })
