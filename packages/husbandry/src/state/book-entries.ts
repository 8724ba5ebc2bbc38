import type { CountData, Fact, FactOf, Id } from '@fryward/shared'
import { factsOf, type Happened } from '../snapshot.ts'
import type { BookEntry } from './book.ts'

type Departure = 'loss' | 'transfer' | 'outcome'

/** Animals moved in from elsewhere in the room, oldest first. */
export function arrivalsIn({ facts }: Happened, subjectId: Id): BookEntry[] {
  const isArrival = (fact: Fact): fact is FactOf<'transfer'> =>
    fact.kind === 'transfer' && fact.data.toSubjectId === subjectId
  return facts.filter(isArrival).map(({ at, data }) => ({ at, kind: 'in', number: data.number }))
}

/** Animals that left, in one of the ways asked for. */
export function departures(happened: Happened, subjectId: Id, ways: readonly Departure[]): BookEntry[] {
  return ways.flatMap((way) =>
    factsOf(happened, way, subjectId).map(({ at, data }): BookEntry => ({ at, kind: 'out', number: data.number })),
  )
}

/** Counts that give a number of the whole, of what the book is about. */
export function countsOf(happened: Happened, subjectId: Id, isOfBook: (count: CountData) => boolean): BookEntry[] {
  return factsOf(happened, 'count', subjectId)
    .filter(({ data }) => isOfBook(data))
    .map(({ at, data }) => ({ at, kind: 'count', number: headsOf(data) }))
}

/** The mean of the times the same heads were counted. */
export const headsOf = ({ animals }: CountData): number =>
  animals.reduce((sum, heads) => sum + heads, 0) / animals.length

export const total = (entries: readonly BookEntry[]): number => entries.reduce((sum, { number }) => sum + number, 0)
