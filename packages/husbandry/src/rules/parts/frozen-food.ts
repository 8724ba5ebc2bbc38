import type { Phrase } from '@fryward/shared'
import { findSpecies } from '../../species/index.ts'
import { phrase } from '../../task/phrases.ts'

/** A species that few of ever take dry food. */
export const eatsFrozen = (species: string): boolean => findSpecies(species)?.feeding.weanedTo.value === 'frozen'

/** Said with dry food where fish of such a species are fed: what to give in its place. common practice */
export function frozenInstead(species: readonly string[]): Phrase[] {
  const names = [...new Set(species.filter(eatsFrozen))].map((id) => findSpecies(id)?.tradeName ?? id)
  if (names.length === 0) return []
  return [
    phrase(
      `For ${names.join(' and ')} frozen food in its place, few take dry: thawed, rinsed, cut to the size of their mouths, as much as they clear in ten minutes. Grams here are of dry food.`,
    ),
  ]
}
