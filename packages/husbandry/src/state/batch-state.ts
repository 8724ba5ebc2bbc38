import { factsOf, type RoomSnapshot, type SnapshotBatch } from '../snapshot.ts'

/** A batch stands on at least one hatch that is not struck out. */
export function isBatchStanding(snapshot: RoomSnapshot, batch: SnapshotBatch): boolean {
  return snapshot.facts.some(
    (fact) => fact.kind === 'hatch' && (fact.subjectId === batch.id || fact.data.batchId === batch.id),
  )
}

export type BatchNumbers = { hatched: number | null; lost: number; moved: number; now: number | null }

/** Larvae by the book: hatched, less losses seen and moves; a head count of larvae starts the book anew. */
export function batchNumbers(snapshot: RoomSnapshot, batch: SnapshotBatch): BatchNumbers {
  const hatches = snapshot.facts.filter(
    (fact) => fact.kind === 'hatch' && (fact.subjectId === batch.id || fact.data.batchId === batch.id),
  )
  const known = hatches.flatMap((fact) =>
    fact.kind === 'hatch' && fact.data.larvae !== undefined ? [fact.data.larvae] : [],
  )
  const hatched = known.length > 0 ? known.reduce((sum, larvae) => sum + larvae, 0) : null
  const headCount = factsOf(snapshot, 'count', batch.id)
    .filter((fact) => fact.data.of === 'larvae' && fact.data.volumeMl === undefined)
    .at(-1)
  const since = headCount?.at ?? ''
  const losses = factsOf(snapshot, 'loss', batch.id)
  const moves = factsOf(snapshot, 'transfer', batch.id)
  const sum = (facts: { at: string; data: { number: number } }[], from: string) =>
    facts.filter((fact) => fact.at > from).reduce((total, fact) => total + fact.data.number, 0)
  const base = headCount
    ? headCount.data.animals.reduce((total, animals) => total + animals, 0) / headCount.data.animals.length
    : hatched
  return {
    hatched,
    lost: sum(losses, ''),
    moved: sum(moves, ''),
    now: base === null ? null : Math.max(0, Math.round(base - sum(losses, since) - sum(moves, since))),
  }
}
