import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotConcentrate } from '../../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'

/** Bottles that nothing was fed from on the day before: a bottle in use is shaken with every feed out of it. */
export function bottlesStanding(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotConcentrate[] {
  const eaters = [...snapshot.cultures, ...snapshot.batches]
  const used = new Set(
    eaters.flatMap(({ id }) =>
      factsUntil(snapshot, 'feeding', { subjectId: id, until: day.startsAt })
        .filter((fact) => daysSince(snapshot, fact, day.date) === 1)
        .flatMap(({ data }) => data.concentrateId ?? []),
    ),
  )
  return snapshot.concentrates.filter(({ id }) => !used.has(id))
}
