import { getSpecies, type SpeciesInput } from '../species/index.ts'
import { embryoQ10LogSpread } from '../species/thermal-defaults.ts'
import { type DurationDays, durationAt } from './rate.ts'

/**
 * Days from spawning to hatch at a constant temperature (for a pouch brooder, to the birth).
 * The level is the species' published one; the slope is an assumption that the profile names.
 * @throws RangeError for an unknown species id or a temperature outside 10 to 40 C.
 */
export function developmentDays(input: { species: SpeciesInput; temperatureC: number }): DurationDays {
  return durationAt(getSpecies(input.species).incubation, input.temperatureC, embryoQ10LogSpread.value)
}
