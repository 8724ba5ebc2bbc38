import { foodLabels } from '../labels/facts.ts'
import { sayNumber } from '../numbers/say-number.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { UnitVoice } from '../voice.ts'
import { type Feeding, type FoodSum, sumFeedings } from './feeding-sums.ts'

function sayFood({ food, animals, volumeMl, massG }: FoodSum, voice: UnitVoice): string {
  const name = foodLabels[food].toLowerCase()
  if (animals !== undefined) return `${sayNumber(animals, voice)} ${name}`
  if (volumeMl !== undefined) return `${sayQuantity({ value: volumeMl, unit: 'mL' }, voice)} ${name}`
  if (massG !== undefined) return `${sayQuantity({ value: massG, unit: 'g' }, voice)} ${name}`
  return name
}

/** A day's feedings in one sentence, food by food: "3 times: 400,000 rotifers, 0.06 mL microalgae concentrate". */
export const sayFeedings = (feedings: Feeding[], voice: UnitVoice): string =>
  `${feedings.length} times: ${sumFeedings(feedings)
    .map((sum) => sayFood(sum, voice))
    .join(', ')}`
