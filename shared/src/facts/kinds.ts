import type * as z from 'zod/mini'
import type { FactKind } from '../vocabulary.ts'
import { CareDataSchema } from './care.ts'
import { CountDataSchema } from './count.ts'
import { CureDataSchema } from './cure.ts'
import { DecisionDataSchema } from './decision.ts'
import { FeedingDataSchema } from './feeding.ts'
import { HarvestDataSchema } from './harvest.ts'
import { HatchDataSchema } from './hatch.ts'
import { InoculationDataSchema } from './inoculation.ts'
import { LossDataSchema } from './loss.ts'
import { ObservationDataSchema } from './observation.ts'
import { OutcomeDataSchema } from './outcome.ts'
import { SpawningDataSchema } from './spawning.ts'
import { TransferDataSchema } from './transfer.ts'
import { TreatmentDataSchema } from './treatment.ts'
import { WaterChangeDataSchema } from './water-change.ts'
import { WaterReadingDataSchema } from './water-reading.ts'
import { WaterTestDataSchema } from './water-test.ts'

/** One schema for each kind of fact; a kind without one does not compile. */
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
  water_reading: WaterReadingDataSchema,
  cure: CureDataSchema,
} as const satisfies Record<FactKind, z.ZodMiniType>

/** What comes with its clutch or batch, through those routes, or from a gauge; all else a person posts as it is. */
export const comesWithItsThing = [
  'spawning',
  'hatch',
  'decision',
  'water_reading',
] as const satisfies readonly FactKind[]
