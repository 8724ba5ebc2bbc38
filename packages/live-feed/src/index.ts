export {
  type Decapsulation,
  type DecapsulationCaution,
  decapsulation,
  HATCHING_TEST,
  type HatchingSample,
  type HatchingTest,
  hatchingTest,
} from './artemia-lot.ts'
export {
  artemiaHatchHours,
  artemiaHatchPlan,
  COLD_STORE,
  CYSTS_STOP_ABOVE_C,
  DEFAULT_NAUPLII_PER_GRAM,
  type HatchPlan,
  type HatchPlanInput,
  type HatchPlanNote,
  type InstantInput,
} from './artemia-plan.ts'
export { CHILLED_STORE, chilledReserve } from './chilled-reserve.ts'
export { animalsToCount, type CountSample, type Density, type Dispersion, densityFromCounts } from './count.ts'
export { crashHazard } from './crash-hazard.ts'
export { type BacktestDay, backtestCulture } from './culture-backtest.ts'
export { type CultureDay, type CultureDays, cultureDaysAhead, expectedCultureDays } from './culture-days.ts'
export { type CultureEstimate, estimateCulture } from './culture-estimate.ts'
export { type CultureFall, cultureFall } from './culture-fall.ts'
export { fitCulture } from './culture-fit.ts'
export {
  type CultureForecast,
  type CultureFutures,
  cultureFutures,
  type FutureInput,
  forecastCulture,
  type HarvestPlan,
  type Quantiles,
} from './culture-forecast.ts'
export {
  type CultureHealth,
  type CultureHealthInput,
  type CultureSign,
  cultureHealth,
  EGG_RATIO_BANDS,
  FEMALES_NEEDED,
  type HealthGrade,
  type HealthReason,
  isShortOfEggs,
} from './culture-health.ts'
export type { CultureAddition, CultureHistory, CultureObservation, CultureRemoval } from './culture-history.ts'
export type { CultureParameters, CultureRates } from './culture-parameters.ts'
export { birthRate, eggDevelopmentDays } from './egg-ratio.ts'
export { type Grazing, type GrazingObservation, learnGrazing } from './grazing.ts'
export { type GrowthPrior, growthPrior, type RotiferStrain } from './growth-prior.ts'
export {
  HARVEST_PRACTICE,
  type HarvestAdvice,
  type HarvestAdviceInput,
  type HarvestBound,
  type HarvestReason,
  harvestAdvice,
  shareAboveFloor,
} from './harvest-advice.ts'
export { INOCULUM_RANGE_PER_ML, type Inoculum, inoculum, SALINITY_SHOCK } from './inoculum.ts'
export { learningPart } from './learning-part.ts'
export { growthFromLifeTable, type LifeTable, ROTIFER_LIFE_TABLE } from './life-table.ts'
export {
  fitLocalLevel,
  type LocalLevelFit,
  type LocalLevelInput,
  type LocalLevelResult,
  localLevelFilter,
} from './local-level.ts'
export {
  DEFAULT_SIEVING_LOSS,
  type PreyTopUp,
  type PreyTopUpInput,
  preyTopUp,
} from './prey-density.ts'
export { type Random, seededRandom } from './random.ts'
export {
  concentrateRation,
  densityFedByConcentrate,
  type Ration,
  type RationAdjustment,
  type RationInput,
  rationAdjustment,
} from './ration.ts'
export { type SteadyHarvest, steadyHarvest } from './steady-harvest.ts'
