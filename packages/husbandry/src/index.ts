export * from './calendar/day-month.ts'
export * from './calendar/husbandry-day.ts'
export * from './engine/check-values.ts'
export * from './engine/draft-day.ts'
export {
  type Parameter,
  type Parameters,
  type ParameterValues,
  parameterSchema,
  resolveParameters,
} from './engine/parameters.ts'
export * from './engine/reconcile.ts'
export * from './engine/rule.ts'
export * from './engine/rule-settings.ts'
export * from './engine/task-key.ts'
export * from './rules/index.ts'
export * from './snapshot.ts'
export * from './species/index.ts'
export * from './state/batch-state.ts'
export * from './state/book.ts'
export * from './state/clutch-nights.ts'
export * from './state/clutch-outlook.ts'
export * from './state/clutch-state.ts'
export * from './state/culture-estimate.ts'
export * from './state/culture-history.ts'
export * from './state/culture-state.ts'
export * from './state/feed-links.ts'
export * from './state/group-state.ts'
export * from './state/larval-diet.ts'
export * from './state/pair-outlook.ts'
export * from './thermal/index.ts'
