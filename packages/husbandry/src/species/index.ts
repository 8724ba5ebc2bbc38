export { findSpecies, getSpecies, type SpeciesInput, speciesProfiles } from './catalogue.ts'
export { copySpecies, type SpeciesChanges } from './copy-species.ts'
export {
  type ClutchStage,
  ClutchStageSchema,
  FoodSchema,
  LarvalFeedingSchema,
  type SpawnInterval,
  SpawnIntervalSchema,
  type SpeciesProfile,
  SpeciesProfileSchema,
  type ThermalDuration,
  ThermalDurationSchema,
} from './schema.ts'
export { type Source, type Sourced, type SourceKind, SourceKindSchema, SourceSchema } from './source.ts'
