/**
 * A species that no profile describes. Its id says what a room knows of it, so whoever reads the id knows as much:
 * `other-9-synchiropus-splendidus` hatches nine days after it is laid, `other-x-...` after nobody knows how many.
 */
export type OtherSpecies = { name: string; eggDays: number | null }

// Sea horses carry their young for weeks; no fish that lays into a nest takes longer. from memory
const mostEggDays = 60

/** Scientific names are written in the Latin alphabet (International Code of Zoological Nomenclature, 1999, article 11.2). */
const slugOf = (name: string): string =>
  name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[\s.]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')

export const isEggDays = (days: number): boolean => Number.isInteger(days) && days >= 1 && days <= mostEggDays

/** Null for a name that holds other letters than a to z, or too many or too few of them. */
export function otherSpeciesId({ name, eggDays }: OtherSpecies): string | null {
  if (eggDays !== null && !isEggDays(eggDays)) return null
  const id = `other-${eggDays ?? 'x'}-${slugOf(name)}`
  return readOtherSpecies(id) && id
}

/** What an id says of a species without a profile; null for any other id. */
export function readOtherSpecies(id: string): OtherSpecies | null {
  const [, days, slug] = /^other-(\d{1,2}|x)-([a-z][a-z0-9]*(?:-[a-z0-9]+)*)$/.exec(id) ?? []
  if (days === undefined || slug === undefined || slug.length < 3 || id.length > 60) return null
  const eggDays = days === 'x' ? null : Number(days)
  if (eggDays !== null && !isEggDays(eggDays)) return null
  return { name: `${slug.slice(0, 1).toUpperCase()}${slug.slice(1).replaceAll('-', ' ')}`, eggDays }
}
