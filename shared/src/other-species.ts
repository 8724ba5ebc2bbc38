import type { CareKind } from './vocabulary.ts'

/**
 * A species that no profile describes. Its id says what a room knows of it, so whoever reads the id knows as much:
 * `other-9-synchiropus-splendidus` lays into a nest and hatches after nine days, `other-xm-...` carries its eggs in its
 * mouth, nobody knows how long.
 */
export type OtherSpecies = { name: string; eggDays: number | null; care: CareKind }

// Sea horses carry their young for weeks; no fish that lays into a nest takes longer. from memory
export const mostEggDays = 60

/** Behind the days; a nest has no letter, as most lay into one. */
const careLetters = { nest: '', mouth: 'm', pouch: 'p', pelagic: 'f' } as const satisfies Record<CareKind, string>

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
export function otherSpeciesId({ name, eggDays, care }: OtherSpecies): string | null {
  if (eggDays !== null && !isEggDays(eggDays)) return null
  const id = `other-${eggDays ?? 'x'}${careLetters[care]}-${slugOf(name)}`
  return readOtherSpecies(id) && id
}

/** What an id says of a species without a profile; null for any other id. */
export function readOtherSpecies(id: string): OtherSpecies | null {
  const said = /^other-(\d{1,2}|x)([mpf]?)-([a-z][a-z0-9]*(?:-[a-z0-9]+)*)$/.exec(id)
  if (!said || id.length > 60) return null
  const [days, letter, slug] = said.slice(1) as [string, string, string]
  if (slug.length < 3) return null
  const eggDays = days === 'x' ? null : Number(days)
  if (eggDays !== null && !isEggDays(eggDays)) return null
  const name = `${slug.slice(0, 1).toUpperCase()}${slug.slice(1).replaceAll('-', ' ')}`
  return { name, eggDays, care: careOf(letter) }
}

const careOf = (letter: string): CareKind =>
  (Object.keys(careLetters) as CareKind[]).find((care) => careLetters[care] === letter) ?? 'nest'
