import type { UnitSystem } from '@fryward/shared'
import { toQuantityText } from '@/base/quantities/Amount.tsx'
import { formatNumber } from '@/base/quantities/format-number.ts'
import { foodLabels } from '@/base/words/labels.ts'
import { type Feeding, type FoodSum, sumFeedings } from './feeding-sums.ts'

function sayFood({ food, animals, volumeMl, massG }: FoodSum, system: UnitSystem): string {
  const name = foodLabels[food].toLowerCase()
  if (animals !== undefined) return `${formatNumber(animals)} ${name}`
  if (volumeMl !== undefined) return `${toQuantityText({ value: volumeMl, unit: 'mL' }, system)} ${name}`
  if (massG !== undefined) return `${toQuantityText({ value: massG, unit: 'g' }, system)} ${name}`
  return name
}

/** A day's feedings in one sentence, food by food: "3 times: 400,000 rotifers, 0.06 mL microalgae concentrate". */
export const sayFeedings = (feedings: Feeding[], system: UnitSystem): string =>
  `${feedings.length} times: ${sumFeedings(feedings)
    .map((sum) => sayFood(sum, system))
    .join(', ')}`
