import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { factsOnDay } from './day-facts.ts'

/** Of a culture, harvested today for a batch and not fed yet; `harvest` is the day's first for it. */
export type SetAside = { ml: number; harvest: FactOf<'harvest'> | undefined }

export function setAsideFor(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { culture, day }: { culture: Pick<SnapshotCulture, 'id'>; day: HusbandryDay },
): SetAside {
  const harvests = factsOnDay(snapshot, 'harvest', { subjectId: culture.id, day }).filter(({ data }) =>
    data.parts.some((part) => part.subjectId === batch.id),
  )
  const takenL = harvests
    .flatMap(({ data }) => data.parts)
    .filter((part) => part.subjectId === batch.id)
    .reduce((sum, part) => sum + part.volumeL, 0)
  const fedMl = rotifersFed(snapshot, batch, day)
    .filter(({ data }) => data.fromCultureId === undefined || data.fromCultureId === culture.id)
    .reduce((sum, { data }) => sum + (data.amountMl ?? 0), 0)
  return { ml: Math.max(0, Number((takenL * 1000 - fedMl).toFixed(3))), harvest: harvests[0] }
}

/** Feeds of rotifers out of their vessels; those of the chilled reserve come beside them. */
export function rotifersFed(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): FactOf<'feeding'>[] {
  return factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(
    ({ data }) => data.food === 'rotifers' && data.isChilled !== true,
  )
}
