import type { CareKind } from '@fryward/shared'
import {
  amphiprionClarkii,
  amphiprionFrenatus,
  amphiprionMelanopus,
  amphiprionOcellaris,
  amphiprionPercula,
  premnasBiaculeatus,
} from './amphiprion.ts'
import { elacatinusFigaro } from './elacatinus-figaro.ts'
import { hippocampusErectus } from './hippocampus-erectus.ts'
import { otherSpecies } from './other-species.ts'
import { pseudochromisFridmani } from './pseudochromis-fridmani.ts'
import { pterapogonKauderni } from './pterapogon-kauderni.ts'
import type { SpeciesProfile } from './schema.ts'

/** The species that come with the package. */
export const speciesProfiles: readonly SpeciesProfile[] = [
  amphiprionOcellaris,
  amphiprionPercula,
  amphiprionClarkii,
  amphiprionFrenatus,
  amphiprionMelanopus,
  premnasBiaculeatus,
  pterapogonKauderni,
  pseudochromisFridmani,
  elacatinusFigaro,
  hippocampusErectus,
]

/** A profile, or the id of one that comes with the package. */
export type SpeciesInput = SpeciesProfile | string

/** The shipped profile with this id, what can be said of a species without one, or null. */
export function findSpecies(id: string): SpeciesProfile | null {
  return speciesProfiles.find((profile) => profile.id === id) ?? otherSpecies(id)
}

/** How a species keeps its eggs; in a nest, as most do, where nobody knows. */
export const careOf = ({ species }: { species: string }): CareKind => findSpecies(species)?.care.value ?? 'nest'

/**
 * The profile that a caller means by a profile or an id.
 * @throws RangeError when the id is not shipped, naming it and the known ids.
 */
export function getSpecies(species: SpeciesInput): SpeciesProfile {
  if (typeof species !== 'string') return species
  const known = findSpecies(species)
  if (known) return known
  const ids = speciesProfiles.map((profile) => profile.id).join(', ')
  throw new RangeError(`species: "${species}" is not a known id; give a profile or one of ${ids}`)
}
