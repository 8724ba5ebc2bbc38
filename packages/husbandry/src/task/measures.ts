import type { Quantity } from '@fryward/shared'

/** Nearest step, freed of binary dust such as 2.7000000000000002. */
function toStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(6))
}

/**
 * Millilitres as a syringe or a measuring jug can give them: 0.1 mL under 10 mL, 0.5 mL under 60 mL (the largest
 * common syringe), then 10 mL, and 100 mL from a litre on. common practice
 */
export function measurableMl(mL: number): number {
  if (mL < 10) return toStep(mL, 0.1)
  if (mL < 60) return toStep(mL, 0.5)
  return mL < 1000 ? toStep(mL, 10) : toStep(mL, 100)
}

/** Litres as a jug or a marked bucket can give them: 10 mL under 1 L, 0.1 L above. common practice */
export function measurableL(litres: number): number {
  return toStep(litres, litreStep(litres))
}
const litreStep = (litres: number): number => (litres < 1 ? 0.01 : 0.1)

/** As `measurableL`, never more than given: for what must not exceed a vessel or a limit. */
export function measurableLDown(litres: number): number {
  const step = litreStep(litres)
  return Number((Math.floor(litres / step + 1e-9) * step).toFixed(6))
}

/** As `measurableL`, never less than given: for what must not run short. */
export function measurableLUp(litres: number): number {
  const step = litreStep(litres)
  return toStep(Math.ceil(litres / step - 1e-9) * step, step)
}

/** Grams as a kitchen scale shows them: 0.1 g under 100 g, 1 g above. common practice */
export const measurableG = (grams: number): number => toStep(grams, gramStep(grams))
/** The first mark of that scale. */
export const leastWeighedG = 0.1
const gramStep = (grams: number): number => (grams < 100 ? 0.1 : 1)

/** As `measurableG`, never less than given: for what must not run short. */
export const measurableGUp = (grams: number): number => {
  const step = gramStep(grams)
  return toStep(Math.ceil(grams / step - 1e-9) * step, step)
}

/** Numbers of animals to two figures: nothing here is known better. */
export function roundAnimals(animals: number): number {
  if (animals <= 0) return 0
  const step = 10 ** Math.max(0, Math.floor(Math.log10(animals)) - 1)
  return Math.round(animals / step) * step
}

export const mL = (value: number): Quantity => ({ value, unit: 'mL' })
export const litres = (value: number): Quantity => ({ value, unit: 'L' })
export const grams = (value: number): Quantity => ({ value, unit: 'g' })
export const perMl = (value: number): Quantity => ({ value, unit: 'per_mL' })
export const animals = (value: number): Quantity => ({ value, unit: 'animals' })
export const feeds = (value: number): Quantity => ({ value, unit: 'feeds' })
export const share = (value: number): Quantity => ({ value, unit: 'share' })
export const days = (value: number): Quantity => ({ value, unit: 'days' })
export const hours = (value: number): Quantity => ({ value, unit: 'hours' })
export const degC = (value: number): Quantity => ({ value, unit: 'degC' })
export const psu = (value: number): Quantity => ({ value, unit: 'psu' })
