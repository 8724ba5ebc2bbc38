import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { factsUntil } from './day-facts.ts'

/** The last fish that were written down as come into a tank and have not left it; null when none have. */
export function arrivalIn(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): FactOf<'care'> | null {
  const cares = factsUntil(snapshot, 'care', { subjectId: tank.id, until: day.endsAt })
  const last = cares.findLast(({ data }) => data.act === 'fish_arrived' || data.act === 'quarantine_empty')
  return last?.data.act === 'fish_arrived' ? last : null
}

// What a look, a treatment or a death says against an end of quarantine.
const sickSigns: readonly string[] = ['spots_or_wounds', 'gasping', 'not_eating']

/** The last thing that spoke of sickness since an arrival; null when nothing has. */
export function lastSickness(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  given: { since: string; day: HusbandryDay },
): Fact | null {
  const about = { subjectId: tank.id, until: given.day.endsAt }
  const looks = factsUntil(snapshot, 'observation', about)
  const spoke: Fact[] = [
    ...looks.filter(({ data }) => data.signs.some((sign) => sickSigns.includes(sign))),
    ...factsUntil(snapshot, 'treatment', about),
    ...factsUntil(snapshot, 'loss', about),
  ]
  return (
    spoke
      .filter(({ at }) => at > given.since)
      .sort((a, b) => (a.at < b.at ? -1 : 1))
      .at(-1) ?? null
  )
}
