export { isBrooder } from '@fryward/shared'
export { careOf, findSpecies, getSpecies, type SpeciesInput, speciesProfiles } from './catalogue.ts'
export { copySpecies, type SpeciesChanges } from './copy-species.ts'
export {
  type ClutchStage,
  type SpeciesProfile,
  SpeciesProfileSchema,
  type ThermalDuration,
} from './schema.ts'
export type { Source } from './source.ts'
