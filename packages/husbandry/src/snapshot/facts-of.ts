import type { FactKind, Id } from '@fryward/shared'
import type { Fact, FactOf } from '../facts/fact.ts'
import type { RoomSnapshot } from './room-snapshot.ts'

/** All that state is worked out from. */
export type Happened = Pick<RoomSnapshot, 'facts'>

type FactIndex = { length: number; bySubject: Map<Id, Fact[]>; byKindAndSubject: Map<string, Fact[]> }
const indexes = new WeakMap<readonly Fact[], FactIndex>()

/** Facts by subject, and by kind and subject, sorted out once for each list of facts: rules ask hundreds of times a day. */
function indexOf(facts: readonly Fact[]): FactIndex {
  const known = indexes.get(facts)
  if (known?.length === facts.length) return known
  const index: FactIndex = { length: facts.length, bySubject: new Map(), byKindAndSubject: new Map() }
  for (const fact of facts) {
    append(index.bySubject, fact.subjectId, fact)
    append(index.byKindAndSubject, `${fact.kind} ${fact.subjectId}`, fact)
  }
  indexes.set(facts, index)
  return index
}

function append<T>(lists: Map<string, T[]>, key: string, value: T): void {
  const list = lists.get(key)
  if (list) list.push(value)
  else lists.set(key, [value])
}

/** Standing facts about one subject, oldest first. */
export function factsAbout(happened: Happened, subjectId: Id): readonly Fact[] {
  return indexOf(happened.facts).bySubject.get(subjectId) ?? []
}

/** Standing facts of one kind about one subject, oldest first. */
export function factsOf<K extends FactKind>(happened: Happened, kind: K, subjectId: Id): FactOf<K>[] {
  // The key holds the kind, so that every fact under it is one of that kind.
  return [...(indexOf(happened.facts).byKindAndSubject.get(`${kind} ${subjectId}`) ?? [])] as FactOf<K>[]
}

export function lastFactOf<K extends FactKind>(happened: Happened, kind: K, subjectId: Id): FactOf<K> | undefined {
  return factsOf(happened, kind, subjectId).at(-1)
}
