import { type CareKind, isBrooder, type OtherSpecies, readOtherSpecies } from '@fryward/shared'
import { hippocampusErectus } from './hippocampus-erectus.ts'
import { pseudochromisFridmani } from './pseudochromis-fridmani.ts'
import { pterapogonKauderni } from './pterapogon-kauderni.ts'
import type { SpeciesProfile } from './schema.ts'
import { assumption, type Source } from './source.ts'

/** Whose numbers are borrowed: of the species with a profile the one that is likest in how it cares for its eggs. */
const lenders: Record<CareKind, SpeciesProfile> = {
  nest: pseudochromisFridmani,
  mouth: pterapogonKauderni,
  pouch: hippocampusErectus,
  pelagic: pseudochromisFridmani,
}

/** What sets the lender apart, for whoever goes by its numbers. */
const beware: Record<CareKind, string> = {
  nest: 'which is slower and has a smaller mouth than a clownfish',
  mouth: 'whose young leave the mouth large enough for Artemia',
  pouch: 'whose young are born large enough for Artemia',
  // Larvae of pelagic eggs are smaller than those of tended ones. common practice
  pelagic:
    'which tends a nest: larvae of floating eggs are smaller as a rule, and many take no rotifers at first, so have copepod nauplii or ciliates ready',
}

// Where nobody has said: nests of reef fish take about 4 to 12 days, seven in the middle of them; floating eggs hatch within a
// day or two in warm water. Both from memory. Brooders take what their lender does.
const unsaidDays: Record<CareKind, number | null> = { nest: 7, mouth: null, pouch: null, pelagic: 1 }

/**
 * A profile for a species that has none, from what its id says; null for an id that says nothing. Its own history of
 * clutches soon says more than what is borrowed, where the spread between pairs is wide.
 */
export function otherSpecies(id: string): SpeciesProfile | null {
  const said = readOtherSpecies(id)
  if (!said) return null
  const { care } = said
  const lender = lenders[care]
  const borrowed = asBorrowed(lender)
  const caution = `There is no profile of this species: its numbers are borrowed from the ${lender.tradeName}, ${beware[care]}. Go by what you see, and ask somebody who has raised it.`
  return {
    ...borrowed,
    id,
    copiedFrom: lender.id,
    scientificName: said.name,
    tradeName: said.name,
    care: assumption(care, 'as this room says'),
    incubation: incubationOf(borrowed, said),
    // Days that a room says of a brooder are those until its young are out.
    ...(isBrooder(care) && said.eggDays !== null
      ? { broodingAfterHatchDays: assumption(0, 'counted with the days that this room says') }
      : {}),
    ...(care === 'pelagic'
      ? {
          hatchHoursAfterLightsOff: assumption({ from: 0, to: 12 }, 'no hour is known; floating eggs hatch at any'),
          secondNightShare: assumption(0, 'eggs of one evening hatch together'),
          ...afloat(borrowed),
        }
      : {}),
    permits: [],
    cautions: [assumption(caution, 'chosen')],
  }
}

/** What sets fish apart that spawn into open water, by what breeders tell of those that have been raised. */
const afloat = ({ feeding, spawnInterval }: SpeciesProfile) => ({
  spawnInterval: {
    ...spawnInterval,
    medianDays: assumption(1, 'many spawn on most evenings of their season'),
    spreadBetweenPairs: assumption(0.7, 'wide: some daily, some by the moon'),
  },
  clutchSize: assumption({ from: 30, to: 300 }, 'of one evening; a dragonet’s 12 to 205, an angelfish’s some hundreds'),
  feeding: {
    ...feeding,
    firstFood: assumption('copepod' as const, 'mouths too small for most rotifers at first'),
    firstFeedDay: assumption(1, 'their mouths open about two days after the hatch, in warm water'),
  },
})

function incubationOf({ incubation }: SpeciesProfile, { eggDays, care }: OtherSpecies): SpeciesProfile['incubation'] {
  if (eggDays !== null)
    return {
      ...incubation,
      medianDays: assumption(eggDays, 'as this room says'),
      // Said in whole days: one that is said may be a night, or two.
      ...(care === 'pelagic'
        ? { spreadBetweenPairs: assumption(0.35, 'floating eggs take hours, and days are said') }
        : {}),
    }
  const days = unsaidDays[care]
  return {
    ...incubation,
    ...(days === null ? {} : { medianDays: assumption(days, 'nobody has said how long its eggs take') }),
    // Two deviations of 0.35 reach from half to twice as long.
    spreadBetweenPairs: assumption(0.35, 'wide, for nobody has said'),
  }
}

/** The same numbers, none of them better known than as borrowed. */
function asBorrowed(profile: SpeciesProfile): SpeciesProfile {
  const borrow = (part: unknown): unknown => {
    if (typeof part !== 'object' || part === null || Array.isArray(part)) return part
    const { value, source } = part as { value?: unknown; source?: Source }
    if (source) return assumption(value, `borrowed from ${profile.scientificName}: ${source.citation}`)
    return Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, borrow(inner)]))
  }
  return borrow(profile) as SpeciesProfile
}
