import type { Quantity } from '@fryward/shared'
import { sayNumber } from '../numbers/say-number.ts'
import type { UnitVoice } from '../voice.ts'
import { toShown } from './shown.ts'

/** A number and its unit apart, for whoever shows them in two sizes; `gap` stands between. */
export type SaidQuantity = { number: string; gap: '' | ' '; unit: string }

export function quantityParts(quantity: Quantity, voice: UnitVoice): SaidQuantity {
  const shown = toShown(quantity, voice.units)
  const gap = shown.label === '%' || shown.label === '' ? '' : ' '
  return { number: sayNumber(shown.value, voice), gap, unit: shown.label }
}

/** "2.64 gal", "15%": never broken between number and unit. */
export function sayQuantity(quantity: Quantity, voice: UnitVoice): string {
  const { number, gap, unit } = quantityParts(quantity, voice)
  return `${number}${gap}${unit}`
}
