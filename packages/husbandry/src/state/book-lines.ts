import type { FactKind, Id, Instant } from '@fryward/shared'
import type { BookLine } from '../facts/effects.ts'
import type { Fact } from '../facts/fact.ts'
import { effectsOf } from '../facts/index.ts'
import type { Happened } from '../snapshot/facts-of.ts'

/** A line of a book with the fact that wrote it. */
export type WrittenLine = BookLine & { at: Instant; kind: FactKind }

type LineIndex = { length: number; bySubject: Map<Id, WrittenLine[]> }
const indexes = new WeakMap<readonly Fact[], LineIndex>()

/** Lines by whose book they stand in, sorted out once for each list of facts: every page and rule asks for numbers. */
function indexOf(facts: readonly Fact[]): LineIndex {
  const known = indexes.get(facts)
  if (known?.length === facts.length) return known
  const index: LineIndex = { length: facts.length, bySubject: new Map() }
  for (const fact of facts)
    for (const line of effectsOf(fact).book?.(fact) ?? []) {
      const lines = index.bySubject.get(line.subjectId) ?? []
      index.bySubject.set(line.subjectId, lines)
      lines.push({ ...line, at: fact.at, kind: fact.kind })
    }
  indexes.set(facts, index)
  return index
}

/** What every fact has written into one thing's book of animals, oldest first. */
export const bookLines = ({ facts }: Happened, subjectId: Id): readonly WrittenLine[] =>
  indexOf(facts).bySubject.get(subjectId) ?? []

/** Sum of the animals that came or left by facts of one kind. */
export const totalOf = (lines: readonly WrittenLine[], way: 'in' | 'out', kind?: FactKind): number =>
  lines
    .filter((line) => line.way === way && (kind === undefined || line.kind === kind))
    .reduce((sum, { number }) => sum + (number ?? 0), 0)
