export {
  artemiaHatchHours,
  artemiaHatchPlan,
  COLD_STORE,
  DEFAULT_NAUPLII_PER_GRAM,
  type HatchPlan,
  type HatchPlanInput,
  type HatchPlanNote,
  type InstantInput,
} from './artemia-plan.ts'
export { animalsToCount, type CountSample, type Density, type Dispersion, densityFromCounts } from './count.ts'
export { birthRate, deathRate, eggDevelopmentDays } from './egg-ratio.ts'
export { type Grazing, type GrazingObservation, learnGrazing } from './grazing.ts'
export {
  DEFAULT_SIEVING_LOSS,
  MOST_EATEN_PER_LARVA_PER_DAY,
  type PreyTopUp,
  type PreyTopUpInput,
  preyTopUp,
} from './prey-density.ts'
export {
  ADJUSTMENT_LIMITS,
  concentrateRation,
  DEFAULT_CELLS_PER_ROTIFER_PER_DAY,
  densityFedByConcentrate,
  type Ration,
  type RationAdjustment,
  type RationInput,
  rationAdjustment,
} from './ration.ts'
