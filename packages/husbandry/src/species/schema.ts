import { careKinds, firstFoods } from '@fryward/shared'
import { z } from 'zod'
import { sourced } from './source.ts'

const days = z.number().positive().max(400)
const temperatureC = z.number().min(10).max(40)
/** Standard deviation of a natural logarithm: 0.13 is about 13 %. */
const logSpread = z.number().positive().max(1)
const dayOfLife = z.int().min(0).max(400)

const RangeSchema = z
  .strictObject({ from: z.number().nonnegative(), to: z.number().nonnegative() })
  .refine((range) => range.from <= range.to, { error: 'from must not exceed to' })

/** A duration that temperature speeds up: its level at one temperature, its slope, and how far pairs and clutches scatter. */
export const ThermalDurationSchema = z
  .strictObject({
    medianDays: sourced(days),
    referenceTemperatureC: sourced(temperatureC),
    /** How many times faster development runs 10 C warmer. */
    q10: sourced(z.number().min(1).max(10)),
    /** Temperatures at which durations were seen; outside, an answer is an extrapolation. */
    triedC: sourced(RangeSchema),
    /** Warmth speeds nothing up past this. */
    notBeyondC: sourced(temperatureC),
    spreadBetweenPairs: sourced(logSpread),
    spreadWithinPair: sourced(logSpread),
  })
  .refine((duration) => duration.referenceTemperatureC.value <= duration.notBeyondC.value, {
    error: 'referenceTemperatureC must not exceed notBeyondC',
  })
export type ThermalDuration = z.infer<typeof ThermalDurationSchema>

/** Days from one spawning of a pair to its next; no temperature slope, since none is known apart from season. */
export const SpawnIntervalSchema = z.strictObject({
  medianDays: sourced(days),
  spreadBetweenPairs: sourced(logSpread),
  spreadWithinPair: sourced(logSpread),
})

/** What a caretaker can see of a clutch, as a share of its development (0 spawned, 1 hatched). */
export const ClutchStageSchema = z.strictObject({
  id: z.string().min(1),
  kind: z.enum(['colour', 'eyes']),
  label: z.string().min(1),
  share: sourced(z.strictObject({ from: z.number().min(0).max(1), to: z.number().min(0).max(1) })),
})
export type ClutchStage = z.infer<typeof ClutchStageSchema>

export const FoodSchema = z.enum(firstFoods)

/** What fish live on once they are weaned from live food. */
export const weanedFoods = ['dry', 'frozen'] as const
export type WeanedFood = (typeof weanedFoods)[number]

/** Days are days after hatch (after release for brooders); day 0 is the day of the hatch night's morning after. */
export const LarvalFeedingSchema = z.strictObject({
  firstFood: sourced(FoodSchema),
  /** Until then they live on their yolk. */
  firstFeedDay: sourced(dayOfLife),
  rotifersPerMl: sourced(RangeSchema.nullable()),
  rotiferLastDay: sourced(dayOfLife.nullable()),
  artemiaFirstDay: sourced(dayOfLife),
  artemiaPerMl: sourced(RangeSchema),
  artemiaAtMostPerMl: sourced(z.number().positive()),
  weaningFirstDay: sourced(dayOfLife),
  weaningLastDay: sourced(dayOfLife),
  /** What they take once they are weaned, and their parents. */
  weanedTo: sourced(z.enum(weanedFoods)),
})

const LengthsSchema = z.array(z.strictObject({ ageDays: z.number().min(0), lengthMm: z.number().positive() })).min(1)

/** Lengths at known ages, and weight as a power of length: so much at one length, and how steeply it rises. */
const GrowthSchema = z.strictObject({
  lengths: sourced(z.strictObject({ slow: LengthsSchema, middle: LengthsSchema, fast: LengthsSchema })),
  weight: sourced(
    z.strictObject({
      weightG: z.number().positive(),
      atMm: z.number().positive(),
      exponent: z.number().min(2).max(4),
    }),
  ),
})

/** One species as a room breeds it: every number with its source. */
export const SpeciesProfileSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, { error: 'lower-case words joined by hyphens' }),
  /** The profile this one was copied from, or null for those that come with the package. */
  copiedFrom: z.string().nullable(),
  scientificName: z.string().min(1),
  tradeName: z.string().min(1),
  care: sourced(z.enum(careKinds)),
  /** Spawning to hatch; for a pouch brooder, to the birth of the young. */
  incubation: ThermalDurationSchema,
  /** Days that hatched young stay with a brooding parent, at the incubation's reference temperature. */
  broodingAfterHatchDays: sourced(z.number().min(0).max(100)),
  /** Hours after lights-off in which a clutch hatches or young are released. */
  hatchHoursAfterLightsOff: sourced(RangeSchema.refine((range) => range.to <= 12, { error: 'a night has 12 hours' })),
  /** Share of a clutch that waits for the evening after the main one. */
  secondNightShare: sourced(z.number().min(0).max(0.5)),
  spawnInterval: SpawnIntervalSchema,
  clutchSize: sourced(RangeSchema),
  /** Hatch to metamorphosis; null where young leave their parent as juveniles. */
  larvalDuration: ThermalDurationSchema.nullable(),
  feeding: LarvalFeedingSchema,
  growth: GrowthSchema,
  larvaePerL: sourced(RangeSchema),
  clutchStages: z.array(ClutchStageSchema),
  cautions: z.array(sourced(z.string().min(1))),
  /** What law or trade ask of whoever moves or gives away fish of this species. */
  permits: z.array(sourced(z.string().min(1))),
})
export type SpeciesProfile = z.infer<typeof SpeciesProfileSchema>
