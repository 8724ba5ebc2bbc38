import type { FactKind, Id, Instant, PlainDate } from '@fryward/shared'
import { addDays, daysBetween, type HusbandryDay, husbandryDay, localDate } from '../calendar/husbandry-day.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

/** Facts about one subject until the end of a day, oldest first. */
export function factsUntil<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, until }: { subjectId: Id; until: Instant },
): FactOf<K>[] {
  const facts = factsOf(snapshot, kind, subjectId)
  return facts.slice(0, numberBefore(facts, until))
}

/** How many of the facts, oldest first, are earlier than an instant: counted from their end, where a day's are. */
const numberBefore = (facts: readonly Pick<Fact, 'at'>[], instant: Instant): number =>
  facts.findLastIndex((fact) => fact.at < instant) + 1

function factsBetween<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, from, until }: { subjectId: Id; from: Instant; until: Instant },
): FactOf<K>[] {
  const facts = factsOf(snapshot, kind, subjectId)
  return facts.slice(numberBefore(facts, from), numberBefore(facts, until))
}

export function factsOnDay<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, day }: { subjectId: Id; day: HusbandryDay },
): FactOf<K>[] {
  return factsBetween(snapshot, kind, { subjectId, from: day.startsAt, until: day.endsAt })
}

/** Facts about one subject on the day before, oldest first. */
export function factsOnDayBefore<K extends FactKind>(
  snapshot: RoomSnapshot,
  kind: K,
  { subjectId, day }: { subjectId: Id; day: HusbandryDay },
): FactOf<K>[] {
  const { startsAt: from } = husbandryDay({ room: snapshot.room, date: addDays(day.date, -1) })
  return factsBetween(snapshot, kind, { subjectId, from, until: day.startsAt })
}

/** A fact's date in the room. */
export function dateOf(snapshot: RoomSnapshot, at: Instant): PlainDate {
  return localDate({ timeZone: snapshot.room.timeZone, at })
}

/** Whole local days since a fact; null when there is none. */
export function daysSince(snapshot: RoomSnapshot, fact: Pick<Fact, 'at'> | undefined, date: PlainDate): number | null {
  return fact ? daysBetween(dateOf(snapshot, fact.at), date) : null
}
