import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { factsOnDay } from './day-facts.ts'

/** Rotifer culture harvested today for a batch and not fed yet; `harvest` is the day's first for it. */
export type SetAside = { ml: number; harvest: FactOf<'harvest'> | undefined }

export function setAsideFor(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): SetAside {
  const harvests = snapshot.cultures
    // Copepods may feed the batch too: their water stands for no rotifers.
    .filter(({ kind }) => kind === 'rotifer')
    .flatMap(({ id }) => factsOnDay(snapshot, 'harvest', { subjectId: id, day }))
    .filter(({ data }) => data.parts.some((part) => part.subjectId === batch.id))
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
  const takenL = harvests
    .flatMap(({ data }) => data.parts)
    .filter((part) => part.subjectId === batch.id)
    .reduce((sum, part) => sum + part.volumeL, 0)
  const fedMl = rotifersFed(snapshot, batch, day).reduce((sum, { data }) => sum + (data.amountMl ?? 0), 0)
  return { ml: Math.max(0, Number((takenL * 1000 - fedMl).toFixed(3))), harvest: harvests[0] }
}

export function rotifersFed(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): FactOf<'feeding'>[] {
  return factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).filter(({ data }) => data.food === 'rotifers')
}
