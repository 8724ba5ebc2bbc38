import type { Id } from '@fryward/shared'
import { addMinutes, type HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../snapshot.ts'
import { factsUntil } from './day-facts.ts'

// Older gaps have been filled by somebody, written down or not: nobody leaves a vessel low for days. common practice
const rememberedMinutes = 36 * 60

/** Litres taken out of a vessel and not yet put back, over the last day and a half; never more than it holds. */
export function litresMissing(
  snapshot: RoomSnapshot,
  { id, volumeL }: { id: Id; volumeL: number },
  day: HusbandryDay,
): number {
  const from = addMinutes(day.startsAt, 24 * 60 - rememberedMinutes)
  const about = { subjectId: id, until: day.endsAt }
  const changes = [
    ...factsUntil(snapshot, 'harvest', about).map((fact) => ({ at: fact.at, litres: fact.data.volumeL })),
    ...factsUntil(snapshot, 'water_change', about).map((fact) => ({
      at: fact.at,
      litres: fact.data.removedL - fact.data.addedL,
    })),
  ]
    .filter((change) => change.at >= from)
    // What was taken out goes before what was put back at the same instant.
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : b.litres - a.litres))
  return changes.reduce((missing, { litres }) => Math.min(volumeL, Math.max(0, missing + litres)), 0)
}
