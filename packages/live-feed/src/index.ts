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
export { type BacktestDay, backtestCulture } from './culture-backtest.ts'
export { type CultureEstimate, estimateCulture } from './culture-estimate.ts'
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
export type { CultureAddition, CultureHistory, CultureObservation, CultureRemoval } from './culture-history.ts'
export type { CultureParameters, CultureRates } from './culture-parameters.ts'
export { birthRate, deathRate, eggDevelopmentDays } from './egg-ratio.ts'
export { type Grazing, type GrazingObservation, learnGrazing } from './grazing.ts'
export { type GrowthPrior, growthPrior } from './growth-prior.ts'
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
  MOST_EATEN_PER_LARVA_PER_DAY,
  type PreyTopUp,
  type PreyTopUpInput,
  preyTopUp,
} from './prey-density.ts'
export { type Random, seededRandom } from './random.ts'
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
