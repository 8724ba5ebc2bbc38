import * as z from 'zod/mini'
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
  aboveZero,
  atLeast,
  atMost,
  numberBetween,
  trimmedText,
  wholeBetween,
  wholeInAddress,
  withDefault,
} from './shapes.ts'
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
const BeyondBookSchema = z.optional(ReasonSchema)

/**
 * A sampled count, never a bare number: what was counted in each replicate, the volume of each, the dilution.
 * For heads (larvae, eggs, juveniles counted one by one) `volumeMl` is left out.
 */
export const CountDataSchema = z.strictObject({
  of: z.enum(countTargets),
  animals: z.array(wholeBetween(0, 100_000)).check(atLeast(1), atMost(20)),
  volumeMl: z.optional(aboveZero(10_000)),
  dilution: withDefault(numberBetween(1, 10_000), 1),
  /** Eggs seen on the females looked at, for the egg ratio. */
  eggs: z.optional(wholeBetween(0, 100_000)),
  females: z.optional(wholeBetween(1, 100_000)),
})
export type CountData = z.infer<typeof CountDataSchema>

export const HarvestPartSchema = z.strictObject({
  to: z.enum(harvestDestinations),
  subjectId: z.optional(IdSchema),
  volumeL: aboveZero(20_000),
})
/** Litres taken from a culture and where each litre went; the parts add up to the whole. */
export const HarvestDataSchema = z
  .strictObject({ volumeL: VolumeLSchema, parts: z.array(HarvestPartSchema).check(atLeast(1), atMost(20)) })
  .check(
    z.refine(
      (harvest) => Math.abs(harvest.parts.reduce((sum, part) => sum + part.volumeL, 0) - harvest.volumeL) < 0.0051,
      { path: ['parts'], message: 'parts that add up to the litres taken' },
    ),
    z.refine(
      (harvest) =>
        harvest.parts.every(
          (part) => (part.to === 'larval_batch' || part.to === 'culture') === (part.subjectId !== undefined),
        ),
      {
        path: ['parts'],
        message: 'a subjectId for each part that went to a larval batch or a culture, and for no other',
      },
    ),
  )
export type HarvestData = z.infer<typeof HarvestDataSchema>

export const FeedingDataSchema = z.strictObject({
  food: z.enum(foods),
  concentrateId: z.optional(IdSchema),
  fromCultureId: z.optional(IdSchema),
  amountMl: z.optional(aboveZero(20_000)),
  amountG: z.optional(aboveZero(20_000)),
  animals: z.optional(numberBetween(0, 1e12)),
  note: z.optional(NoteSchema),
})

/** Animals put into a culture, from a parent or bought in. */
export const InoculationDataSchema = z.strictObject({
  densityPerMl: z.optional(DensityPerMlSchema),
  animals: z.optional(numberBetween(0, 1e12)),
  fromCultureId: z.optional(IdSchema),
})

/** Water taken out and put in; a top-up after evaporation takes nothing out and has salinity 0. */
export const WaterChangeDataSchema = z.strictObject({
  removedL: numberBetween(0, 20_000),
  addedL: numberBetween(0, 20_000),
  salinity: z.optional(SalinitySchema),
  temperatureC: z.optional(TemperatureCSchema),
})

/** Concentrations are mg/L; ammonia, nitrite and nitrate are as nitrogen (N), total ammonia as total. */
export const WaterTestDataSchema = z
  .strictObject({
    temperatureC: z.optional(TemperatureCSchema),
    salinity: z.optional(SalinitySchema),
    pH: z.optional(PhSchema),
    totalAmmoniaNMgPerL: z.optional(numberBetween(0, 100)),
    nitriteNMgPerL: z.optional(numberBetween(0, 100)),
    nitrateNMgPerL: z.optional(numberBetween(0, 1000)),
    oxygenMgPerL: z.optional(numberBetween(0, 30)),
  })
  .check(z.refine((test) => Object.values(test).some((value) => value !== undefined), 'at least one measured value'))
export type WaterTestData = z.infer<typeof WaterTestDataSchema>

export const LossDataSchema = z.strictObject({
  number: wholeBetween(1, 1_000_000),
  of: z.enum(['eggs', 'larvae', 'juveniles', 'adults', 'culture']),
  cause: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})

/** Animals that leave one subject and arrive at another. */
export const TransferDataSchema = z.strictObject({
  number: HeadCountSchema,
  toSubjectId: IdSchema,
  note: z.optional(NoteSchema),
  beyondBook: BeyondBookSchema,
})

export const ObservationDataSchema = z
  .strictObject({
    signs: withDefault(z.array(z.enum(signs)).check(atMost(20)), []),
    eggStage: z.optional(z.enum(eggStages)),
    note: z.optional(NoteSchema),
  })
  .check(
    z.refine(
      (seen) => seen.signs.length > 0 || seen.eggStage !== undefined || (seen.note ?? '') !== '',
      'a sign, an egg colour or a note',
    ),
  )

export const CareDataSchema = z.strictObject({
  act: z.enum(careActs),
  litres: z.optional(VolumeLSchema),
  saltG: z.optional(numberBetween(0, 1e6)),
  note: z.optional(NoteSchema),
})

export const SpawningDataSchema = z.strictObject({ eggs: z.optional(HeadCountSchema) })

/** A hatch seen the morning after: how much of the clutch, how many larvae, and into which batch. */
export const HatchDataSchema = z.strictObject({
  hatchedOn: z.iso.date(),
  share: z.optional(ShareSchema),
  larvae: z.optional(HeadCountSchema),
  batchId: z.optional(IdSchema),
})

/** A treatment as written by whoever prescribed it; nothing is suggested here. */
export const TreatmentDataSchema = z.strictObject({
  product: trimmedText({ shortest: 1, longest: 200, wanted: 'the product as it is written' }),
  dose: trimmedText({ shortest: 1, longest: 200, wanted: 'the dose as it is written' }),
  prescribedBy: trimmedText({ shortest: 1, longest: 200, wanted: 'who prescribed it' }),
  note: z.optional(NoteSchema),
})

/** Fish that were placed, kept for breeding or culled: they leave the group and are counted, not lost. */
export const OutcomeDataSchema = z.strictObject({
  outcome: z.enum(outcomes),
  number: wholeBetween(1, 1_000_000),
  note: z.optional(NoteSchema),
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
} as const satisfies Record<import('./vocabulary.ts').FactKind, z.ZodMiniType>

const factBase = {
  id: IdSchema,
  subjectId: IdSchema,
  subjectKind: z.enum(subjectKinds),
  /** When it was done or seen. */
  at: InstantSchema,
  receivedAt: InstantSchema,
  recordedByName: z.string(),
  taskId: z.nullable(IdSchema),
  struckAt: z.nullable(InstantSchema),
  struckByName: z.nullable(z.string()),
  struckReason: z.nullable(z.string()),
  revision: z.int(),
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
  .register(z.globalRegistry, { id: 'Fact' })
export type Fact = z.infer<typeof FactSchema>
export type FactOf<K extends Fact['kind']> = Extract<Fact, { kind: K }>

const newFactOf = <K extends keyof typeof factDataSchemas>(kind: K) =>
  z.strictObject({
    kind: z.literal(kind),
    subjectId: IdSchema,
    at: z.optional(InstantSchema),
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
  subjectId: z.optional(IdSchema),
  kind: z.optional(
    z.enum(Object.keys(factDataSchemas) as [keyof typeof factDataSchemas, ...(keyof typeof factDataSchemas)[]]),
  ),
  before: z.optional(InstantSchema),
  limit: withDefault(wholeInAddress(1, 500), 100),
})
export const FactPageSchema = z
  .object({ facts: z.array(FactSchema), nextBefore: z.nullable(InstantSchema) })
  .register(z.globalRegistry, { id: 'FactPage' })
