import type { FactKind, Id, Instant } from '@fryward/shared'
import type { BookLine } from '../facts/effects.ts'
import type { Fact } from '../facts/fact.ts'
import { effectsOf } from '../facts/index.ts'
import type { Happened } from '../snapshot/facts-of.ts'
import { factList } from '../snapshot/live-snapshot.ts'

/** A line of a book with the fact that wrote it. */
export type WrittenLine = BookLine & { at: Instant; kind: FactKind }

const written = new WeakMap<readonly Fact[], WrittenLine[]>()

/** What every fact has written into one thing's book of animals, oldest first. */
export function bookLines(happened: Happened, subjectId: Id): readonly WrittenLine[] {
  const facts = factList(happened, `book ${subjectId}`)
  const known = written.get(facts)
  if (known) return known
  const lines = facts.flatMap((fact) =>
    (effectsOf(fact).book?.(fact) ?? [])
      .filter((line) => line.subjectId === subjectId)
      .map((line) => ({ ...line, at: fact.at, kind: fact.kind })),
  )
  // The empty list is everybody's.
  if (facts.length > 0) written.set(facts, lines)
  return lines
}

/** Sum of the animals that came or left by facts of one kind. */
export const totalOf = (lines: readonly WrittenLine[], way: 'in' | 'out', kind?: FactKind): number =>
  lines
    .filter((line) => line.way === way && (kind === undefined || line.kind === kind))
    .reduce((sum, { number }) => sum + (number ?? 0), 0)
