import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { factsUntil } from './day-facts.ts'

/** The last fish that were written down as come into a tank, while any of them live in it; null when none do. */
export function arrivalIn(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): FactOf<'care'> | null {
  const about = { subjectId: tank.id, until: day.endsAt }
  const cares = factsUntil(snapshot, 'care', about)
  const emptied = cares.findLastIndex(({ data }) => data.act === 'quarantine_empty')
  const arrivals = cares.slice(emptied + 1).filter(({ data }) => data.act === 'fish_arrived')
  const [first] = arrivals
  if (!first) return null
  const deaths = factsUntil(snapshot, 'loss', about).filter(({ at }) => at >= first.at)
  const dead = deaths.reduce((sum, { data }) => sum + data.number, 0)
  // Where nobody wrote down how many came, only a look at the tank says that none are left.
  const came = arrivals.reduce((sum, { data }) => sum + (data.number ?? Number.POSITIVE_INFINITY), 0)
  return dead >= came ? null : (arrivals.at(-1) ?? null)
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
