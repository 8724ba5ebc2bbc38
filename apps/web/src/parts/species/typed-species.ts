import {
  type CareKind,
  careKinds,
  isEggDays,
  type OtherSpecies,
  otherSpeciesId,
  readOtherSpecies,
  type SpeciesSummary,
} from '@fryward/shared'
import { typedNumber, type UnitVoice } from '@fryward/words'

/** A species as typed: an id, nothing yet, or what is typed of one that no profile describes. */
export type TypedOther = { name: string; days: string; care: CareKind }

/** One text, so that a form keeps it as it keeps a choice. */
export const typedText = ({ name, days, care }: TypedOther): string => `other|${days}|${care}|${name}`

export function typedOther(text: string): TypedOther | null {
  const [, days, said, name] = /^other\|([^|]*)\|([a-z]+)\|(.*)$/.exec(text) ?? []
  const care = careKinds.find((kind) => kind === said)
  return days === undefined || name === undefined || care === undefined ? null : { days, name, care }
}

type Missing = { missing: string }

/** The id that goes on the wire, or what is missing, as part of a sentence. */
export function readSpecies(text: string, voice: UnitVoice): { id: string } | Missing {
  const other = typedOther(text)
  if (!other) return text === '' ? { missing: 'the species' } : { id: text }
  const said = readOther(other, voice)
  return 'missing' in said ? said : { id: said.id }
}

/** What was typed of a species without a profile, with the id that says so. */
export function readOther(other: TypedOther, voice: UnitVoice): (OtherSpecies & { id: string }) | Missing {
  const eggDays = typedNumber(other.days, null, voice) ?? null
  if (other.days.trim() !== '' && (eggDays === null || !isEggDays(eggDays)))
    return { missing: `the days ${daysLabels[other.care]}, a whole number from 1 to 60, or nothing where nobody knows` }
  const said = { name: other.name.trim(), eggDays, care: other.care }
  const id = otherSpeciesId(said)
  return id === null
    ? { missing: 'the scientific name of the species in letters from a to z, such as Synchiropus splendidus' }
    : { ...said, id }
}

/** What the days of eggs are counted to. */
export const daysLabels = {
  nest: 'from eggs to hatch',
  mouth: 'from eggs to release',
  pouch: 'from eggs to birth',
  pelagic: 'from eggs to hatch',
} as const satisfies Record<CareKind, string>

/** Whether a pair of a species, by its id or as typed, lays its eggs into a nest; taken so while nobody knows. */
export function hasNest(text: string, known: readonly Pick<SpeciesSummary, 'id' | 'care'>[]): boolean {
  const care = known.find(({ id }) => id === text)?.care ?? (typedOther(text) ?? readOtherSpecies(text))?.care
  return care === undefined || care === 'nest'
}

/** What a species without a profile is called; null for one that has a profile. */
export const nameOfOther = (id: string): string | null => readOtherSpecies(id)?.name ?? null
