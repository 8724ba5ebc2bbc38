import type { FactKind, Id, Instant, PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay, localDate } from '../calendar/husbandry-day.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

/** Facts about one subject until the end of a day, oldest first. */
export function factsUntil<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, until }: { subjectId: Id; until: Instant },
): FactOf<K>[] {
  return factsOf(snapshot, kind, subjectId).filter((fact) => fact.at < until)
}

export function factsOnDay<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, day }: { subjectId: Id; day: HusbandryDay },
): FactOf<K>[] {
  return factsUntil(snapshot, kind, { subjectId, until: day.endsAt }).filter((fact) => fact.at >= day.startsAt)
}

/** A fact's date in the room. */
export function dateOf(snapshot: RoomSnapshot, at: Instant): PlainDate {
  return localDate({ timeZone: snapshot.room.timeZone, at })
}

/** Whole local days since a fact; null when there is none. */
export function daysSince(snapshot: RoomSnapshot, fact: Pick<Fact, 'at'> | undefined, date: PlainDate): number | null {
  return fact ? daysBetween(dateOf(snapshot, fact.at), date) : null
}
