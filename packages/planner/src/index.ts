export { type FoodPlan, type Give, type PlannedDay, planFood } from './plan-food.ts'
export type { CultureUse, DayGrowth, FoodQuestion, Future, PlanCulture, PlanEater } from './question.ts'
export type { Band, FoodBand, Tried, TriedDay } from './tried.ts'
