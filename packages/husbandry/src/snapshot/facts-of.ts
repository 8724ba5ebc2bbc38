import type { FactKind, Id } from '@fryward/shared'
import type { Fact, FactOf } from '../facts/fact.ts'
import { factList } from './live-snapshot.ts'
import type { RoomSnapshot } from './room-snapshot.ts'

/** All that state is worked out from. */
export type Happened = Pick<RoomSnapshot, 'facts'>

/** Standing facts about one subject, oldest first. */
export function factsAbout(happened: Happened, subjectId: Id): readonly Fact[] {
  return factList(happened, `about ${subjectId}`)
}

/** Standing facts of one kind about one subject, oldest first. */
export function factsOf<K extends FactKind>(happened: Happened, kind: K, subjectId: Id): readonly FactOf<K>[] {
  // The list's name holds the kind, so that every fact on it is one of that kind.
  return factList(happened, `${kind} ${subjectId}`) as readonly FactOf<K>[]
}

/** Standing feeds out of a culture, its jar or its reserve, whoever ate them and whether they live on; oldest first. */
export function feedsFrom(happened: Happened, cultureId: Id): readonly FactOf<'feeding'>[] {
  return factList(happened, `fed from ${cultureId}`) as readonly FactOf<'feeding'>[]
}

export function lastFactOf<K extends FactKind>(happened: Happened, kind: K, subjectId: Id): FactOf<K> | undefined {
  return factsOf(happened, kind, subjectId).at(-1)
}
