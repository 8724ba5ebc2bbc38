import type { FactOf, Food } from '@fryward/shared'

export type Feeding = FactOf<'feeding'>['data']
/** What was given of one food; an amount is left out where one of its feedings did not say it. */
export type FoodSum = { food: Food; animals?: number; volumeMl?: number; massG?: number }

function sumOf(feedings: Feeding[], field: 'amountMl' | 'amountG' | 'animals'): number | undefined {
  const known = feedings.flatMap((feeding) => feeding[field] ?? [])
  return known.length === feedings.length ? known.reduce((sum, one) => sum + one, 0) : undefined
}

/** Feedings added up food by food, in the order they come in. */
export function sumFeedings(feedings: Feeding[]): FoodSum[] {
  const foods = [...new Set(feedings.map((feeding) => feeding.food))]
  return foods.map((food) => {
    const own = feedings.filter((feeding) => feeding.food === food)
    const animals = sumOf(own, 'animals')
    const volumeMl = sumOf(own, 'amountMl')
    const massG = sumOf(own, 'amountG')
    return {
      food,
      ...(animals === undefined ? {} : { animals }),
      ...(volumeMl === undefined ? {} : { volumeMl }),
      ...(massG === undefined ? {} : { massG }),
    }
  })
}
