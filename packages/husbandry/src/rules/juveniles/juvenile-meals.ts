import type { Phrase, Quantity, TaskField, TaskStep, Title, TitleDetail } from '@fryward/shared'
import { z } from 'zod'
import type { FactDraft } from '../../facts/fact.ts'
import type { GroupRation, TankRation } from '../../plans/juvenile-ration.ts'
import { type WeanedFood, weanedFoods } from '../../species/schema.ts'
import { givenAmountField } from '../../task/fields.ts'
import { foodName } from '../../task/foods.ts'
import { grams, leastWeighedG, measurableG } from '../../task/measures.ts'
import { phrase, stepHeading } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf, type Values } from '../../task/values.ts'
import { mealSteps } from '../parts/meal-steps.ts'

/** What those in a tank that eat alike get at one feed. */
export type Meal = {
  food: WeanedFood
  groups: GroupRation[]
  /** For a day; null while nobody has said how many any of them are. */
  dayG: number | null
  /** For a feed, as a scale shows it; null under its first mark, where the pinch is the measure. */
  feedG: number | null
}

/** A tank's meals, that of the eldest first. */
export function mealsOf({ groups, rounds }: TankRation): Meal[] {
  return [...new Set(groups.map(({ food }) => food))].map((food) => {
    const eaters = groups.filter((group) => group.food === food)
    const dayG = sumG(eaters)
    const weighedG = dayG === null ? 0 : measurableG(dayG / rounds.length)
    return { food, groups: eaters, dayG, feedG: weighedG >= leastWeighedG ? weighedG : null }
  })
}

function sumG(groups: readonly GroupRation[]): number | null {
  const known = groups.flatMap(({ dayG }) => (dayG === null ? [] : [dayG]))
  return known.length === groups.length ? known.reduce((sum, dayG) => sum + dayG, 0) : null
}

export function mealTitle([first, ...others]: readonly Meal[], details: TitleDetail[]): Title {
  if (!first) return titled('feed', { details })
  const amount = first.feedG === null ? null : grams(first.feedG)
  return titled(amount ? 'give' : 'pinch', {
    amount,
    thing: foodName(first.food),
    details: [...others.map(alsoGiven), ...details],
  })
}

const alsoGiven = ({ food, feedG }: Meal): TitleDetail =>
  feedG === null ? also(`a pinch of ${foodName(food)}`) : { kind: 'amount', quantity: grams(feedG), of: foodName(food) }

/** Steps of every meal, under whose it is where a tank has two. */
export const stepsOfMeals = (meals: readonly Meal[], feedsADay: number): TaskStep[] =>
  meals.flatMap((meal) => [
    ...(meals.length > 1
      ? [stepHeading(`For ${meal.groups.map(({ group }) => group.name).join(', ')}: ${foodName(meal.food)}`)]
      : []),
    ...pinchStep(meal, feedsADay),
    ...mealSteps(meal.food),
  ])

function pinchStep({ food, dayG, feedG }: Meal, feedsADay: number): Phrase[] {
  const weekG = dayG === null ? 0 : measurableG(dayG * 7)
  if (feedG !== null || weekG < leastWeighedG) return []
  const week = { week: grams(weekG), feeds: { value: feedsADay * 7, unit: 'feeds' } satisfies Quantity }
  return [phrase(howMuchAPinchIs[food], week)]
}

const howMuchAPinchIs: Record<WeanedFood, string> = {
  dry: 'How much a pinch is: {week} weighed into a jar lasts them a week, {feeds}.',
  frozen: 'How much a pinch is: {week} of it, drained, lasts them a week, {feeds}.',
}

const fieldNames = ['amountG', 'otherG'] as const
const givenLabels: Record<WeanedFood, string> = { dry: 'Dry food given', frozen: 'Frozen food given' }

export const mealFields = (meals: readonly Meal[]): TaskField[] =>
  meals.flatMap(({ food, feedG }, index) =>
    feedG === null
      ? []
      : [
          givenAmountField({
            name: fieldNames[index]!,
            label: meals.length > 1 ? givenLabels[food] : 'Given',
            unit: 'g',
            planned: feedG,
            maximum: Math.max(100, feedG * 10),
            step: 0.1,
          }),
        ],
  )

export const MealContextSchema = z.object({
  /** Each group in the tank with its part of its meal; tasks kept before a tank was fed as one did not say. */
  parts: z.array(z.object({ groupId: z.string(), share: z.number(), meal: z.int().default(0) })).default([]),
  /** Nor, before frozen food was one of its own, what they are: then it is dry, as much as the task says. */
  meals: z.array(z.object({ food: z.enum(weanedFoods), feedG: z.number().nullable() })).default([]),
})
type MealContext = z.infer<typeof MealContextSchema>

export const mealContext = (meals: readonly Meal[]): MealContext => ({
  parts: meals.flatMap(({ groups, dayG }, meal) =>
    groups.map(({ group, dayG: own }) => ({
      groupId: group.id,
      share: dayG === null || dayG === 0 || own === null ? 1 / groups.length : own / dayG,
      meal,
    })),
  ),
  meals: meals.map(({ food, feedG }) => ({ food, feedG })),
})

/** A feeding for each group: its part of what was given, or of what was planned. */
export function mealFacts(
  { parts, meals }: MealContext,
  { subjectId, values, plannedG }: { subjectId: string; values: Values; plannedG: number | null },
): FactDraft[] {
  const fed = parts.length > 0 ? parts : [{ groupId: subjectId, share: 1, meal: 0 }]
  return fed.map(({ groupId, share, meal }) => {
    const { food, feedG } = meals[meal] ?? { food: 'dry' as const, feedG: plannedG }
    const givenG = numberOf(values, fieldNames[meal] ?? fieldNames[0]) ?? feedG ?? 0
    const weighedG = Number((givenG * share).toFixed(3))
    return { kind: 'feeding', subjectId: groupId, data: { food, ...(weighedG > 0 ? { amountG: weighedG } : {}) } }
  })
}
