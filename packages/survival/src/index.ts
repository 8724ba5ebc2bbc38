export { ArgumentError } from './argument-error.ts'
export type { Cluster, ClusterTest } from './cluster-test.ts'
export { type ComparedGroup, type Conclusion, compareGroups, type GroupComparison } from './compare-groups.ts'
export {
  clopperPearsonInterval,
  type Interval,
  type Proportion,
  poissonInterval,
  proportionDifferenceInterval,
  wilsonInterval,
} from './intervals.ts'
export { kaplanMeier, type SurvivalCurve, type SurvivalStep, survivalAt } from './kaplan-meier.ts'
export type { LedgerEntry } from './ledger.ts'
export { type LifeTable, type LifeTableRow, lifeTable } from './life-table.ts'
export { type LogRank, logRank } from './log-rank.ts'
export type { Observation } from './observation.ts'
export { observationsFromBook } from './observations-from-book.ts'
export type { Share } from './share-interval.ts'
export { type StageCount, type StageResult, stageCounts } from './stage-counts.ts'
