import { isEggDays, otherSpeciesId, readOtherSpecies } from '@fryward/shared'
import { typedNumber, type UnitVoice } from '@fryward/words'

/** A species as typed: an id, nothing yet, or what is typed of one that no profile describes. */
export type TypedOther = { name: string; days: string }

/** One text, so that a form keeps it as it keeps a choice. */
export const typedText = ({ name, days }: TypedOther): string => `other|${days}|${name}`

export function typedOther(text: string): TypedOther | null {
  const [, days, name] = /^other\|([^|]*)\|(.*)$/.exec(text) ?? []
  return days === undefined || name === undefined ? null : { days, name }
}

/** The id that goes on the wire, or what is missing, as part of a sentence. */
export function readSpecies(text: string, voice: UnitVoice): { id: string } | { missing: string } {
  const other = typedOther(text)
  if (!other) return text === '' ? { missing: 'the species' } : { id: text }
  const days = typedNumber(other.days, null, voice) ?? null
  if (other.days.trim() !== '' && (days === null || !isEggDays(days)))
    return { missing: 'the days from eggs to hatch, a whole number from 1 to 60, or nothing where nobody knows' }
  const id = otherSpeciesId({ name: other.name, eggDays: days })
  return id === null
    ? { missing: 'the scientific name of the species in letters from a to z, such as Synchiropus splendidus' }
    : { id }
}

/** What a species without a profile is called; null for one that has a profile. */
export const nameOfOther = (id: string): string | null => readOtherSpecies(id)?.name ?? null
