import type { Locale } from '@fryward/shared'

/** The characters that a locale puts between digits. `group` is null where four digits stand together and so do more. */
export type Marks = { decimal: string; group: string | null; digits: string }

const known = new Map<Locale, Marks>()

/** What a number of this locale is written with, as Intl writes it. */
export function marksOf(locale: Locale): Marks {
  const marks = known.get(locale) ?? readMarks(locale)
  known.set(locale, marks)
  return marks
}

function readMarks(locale: Locale): Marks {
  const format = new Intl.NumberFormat(locale)
  const parts = format.formatToParts(1_234_567.5)
  return {
    decimal: parts.find((part) => part.type === 'decimal')?.value ?? '.',
    group: parts.find((part) => part.type === 'group')?.value ?? null,
    digits: format.resolvedOptions().numberingSystem,
  }
}
