import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { factsUntil } from './day-facts.ts'

/** When a culture of algae was last filled up, and the litres fed from it since. */
export function algaeDrawn(
  snapshot: RoomSnapshot,
  { id, volumeL }: SnapshotCulture,
  day: HusbandryDay,
): { last: FactOf<'water_change'> | undefined; drawnL: number } {
  const about = { subjectId: id, until: day.endsAt }
  const last = factsUntil(snapshot, 'water_change', about).findLast(({ data }) => data.addedL > 0)
  const drawn = factsUntil(snapshot, 'harvest', about).filter(({ at }) => !last || at > last.at)
  return { last, drawnL: Math.min(volumeL, Number(drawn.reduce((sum, { data }) => sum + data.volumeL, 0).toFixed(3))) }
}
