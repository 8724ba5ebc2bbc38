import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotConcentrate } from '../../snapshot/room-snapshot.ts'
import { factsOnDayBefore } from '../../state/day-facts.ts'

/** Bottles that nothing was fed from on the day before: a bottle in use is shaken with every feed out of it. */
export function bottlesStanding(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotConcentrate[] {
  const eaters = [...snapshot.cultures, ...snapshot.batches]
  const used = new Set(
    eaters.flatMap(({ id }) =>
      factsOnDayBefore(snapshot, 'feeding', { subjectId: id, day }).flatMap(({ data }) => data.concentrateId ?? []),
    ),
  )
  return snapshot.concentrates.filter(({ id }) => !used.has(id))
}
