import { type FactKind, factDataSchemas } from '@fryward/shared'
import type { FactOfFile } from './fact-pages.ts'
import type { Cell, FileRow } from './file-cells.ts'

type Names = { person: (userId: string | null) => string; thing: (id: string | undefined) => string }
export type FactFile = {
  kind: FactKind
  headers: readonly string[]
  /** What follows date, time and thing. */
  cells: (fact: FactOfFile, names: Names) => FileRow
}

const countCells = ({ data }: FactOfFile): Cell[] => {
  const { of, animals, volumeMl, dilution, eggs, females, lengthMm } = factDataSchemas.count.parse(data)
  const mean = animals.reduce((sum, each) => sum + each, 0) / animals.length
  const perMl = volumeMl === undefined ? null : (mean * dilution) / volumeMl
  return [of, animals.join(' '), volumeMl, dilution, eggs, females, lengthMm, perMl]
}

export const factFiles: Record<'counts' | 'feedings' | 'losses', FactFile> = {
  counts: {
    kind: 'count',
    // What an import reads, under the same names; per_ml follows from the rest.
    headers: ['of', 'samples', 'volume_ml', 'dilution', 'eggs', 'females', 'length_mm', 'per_ml', 'recorded_by'],
    cells: (fact, { person }) => [...countCells(fact), person(fact.recordedBy)],
  },
  feedings: {
    kind: 'feeding',
    headers: ['food', 'from', 'amount_ml', 'amount_g', 'animals', 'note', 'recorded_by'],
    cells: (fact, { person, thing }) => {
      const feeding = factDataSchemas.feeding.parse(fact.data)
      const from = thing(feeding.fromCultureId ?? feeding.concentrateId)
      return [
        ...[feeding.food, from, feeding.amountMl, feeding.amountG, feeding.animals, feeding.note],
        person(fact.recordedBy),
      ]
    },
  },
  losses: {
    kind: 'loss',
    headers: ['of', 'number', 'cause', 'why_more_than_the_book_said', 'recorded_by'],
    cells: (fact, { person }) => {
      const { of, number, cause, beyondBook } = factDataSchemas.loss.parse(fact.data)
      return [of, number, cause, beyondBook, person(fact.recordedBy)]
    },
  },
}
