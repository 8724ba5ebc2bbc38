import { readOtherSpecies } from '@fryward/shared'
import { pseudochromisFridmani } from './pseudochromis-fridmani.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, type Source } from './source.ts'

/** What whoever keeps such a species has to hear before they go by its numbers. */
const otherSpeciesCaution =
  'There is no profile of this species: its numbers are borrowed from the orchid dottyback, which is slower and has a smaller mouth than a clownfish. Go by what you see, and ask somebody who has raised it.'

const borrowed = asBorrowed(pseudochromisFridmani)

/**
 * A profile for a species that has none, from what its id says; null for an id that says nothing. Its own history of
 * clutches soon says more than what is borrowed, where the spread between pairs is wide.
 */
export function otherSpecies(id: string): SpeciesProfile | null {
  const said = readOtherSpecies(id)
  if (!said) return null
  const { incubation } = borrowed
  const known = said.eggDays !== null
  return {
    ...borrowed,
    id,
    copiedFrom: pseudochromisFridmani.id,
    scientificName: said.name,
    tradeName: said.name,
    incubation: {
      ...incubation,
      medianDays: known
        ? assumption(said.eggDays ?? 0, 'as this room says')
        : // Clutches in nests of reef fish hatch after about 4 to 12 days, seven in the middle of them. from memory
          assumption(7, 'nobody has said how long its eggs take'),
      // Two deviations of 0.35 reach from 3.5 to 14 days.
      spreadBetweenPairs: known ? incubation.spreadBetweenPairs : assumption(0.35, 'wide, for nobody has said'),
    },
    permits: [],
    cautions: [assumption(otherSpeciesCaution, 'chosen')],
  }
}

/** The same numbers, none of them better known than as borrowed. */
function asBorrowed<T>(part: T): T
function asBorrowed(part: unknown): unknown {
  if (typeof part !== 'object' || part === null || Array.isArray(part)) return part
  const { value, source } = part as { value?: unknown; source?: Source }
  if (source) return assumption(value, `borrowed from ${pseudochromisFridmani.scientificName}: ${source.citation}`)
  return Object.fromEntries(Object.entries(part).map(([name, value]) => [name, asBorrowed(value)]))
}
