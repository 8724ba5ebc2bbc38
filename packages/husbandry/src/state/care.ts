import type { CareAct, Id } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from './day-facts.ts'

/** The last time something was done to a subject, up to the end of a day. */
export function lastCare(
  snapshot: RoomSnapshot,
  act: CareAct,
  { subjectId, day }: { subjectId: Id; day: HusbandryDay },
): FactOf<'care'> | undefined {
  return factsUntil(snapshot, 'care', { subjectId, until: day.endsAt }).findLast((fact) => fact.data.act === act)
}

/** True when `everyDays` have passed since the act, or since `sinceDate` while it has never been done. */
export function isCareDue(
  snapshot: RoomSnapshot,
  act: CareAct,
  {
    subjectId,
    day,
    everyDays,
    daysWithout,
  }: { subjectId: Id; day: HusbandryDay; everyDays: number; daysWithout: number },
): boolean {
  const since = daysSince(snapshot, lastCare(snapshot, act, { subjectId, day }), day.date) ?? daysWithout
  return since >= everyDays
}
