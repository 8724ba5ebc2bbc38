import { batchNumbers, daysBetween, isBatchStanding, localDate, type RoomSnapshot } from '@fryward/husbandry'
import type { Id, LarvalBatch } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'
import { loadSnapshot } from '../snapshot/load-snapshot.ts'

type Scope = { tx: Transaction; roomId: Id; ctx: { now: string } }

export async function listLarvalBatchesInRoom(scope: Scope): Promise<LarvalBatch[]> {
  const snapshot = await loadSnapshot(scope.tx, { roomId: scope.roomId, now: scope.ctx.now })
  const subjects = await scope.tx.subject.findMany({ where: { roomId: scope.roomId, kind: 'larval_batch' } })
  const byId = new Map(subjects.map((subject) => [subject.id, subject]))
  const today = localDate({ timeZone: snapshot.room.timeZone, at: scope.ctx.now })
  return snapshot.batches
    .filter((batch) => isBatchStanding(snapshot, batch))
    .map((batch) => ({
      ...batch,
      ageDays: daysBetween(batch.hatchedOn, today),
      numberNow: numberNow(snapshot, batch),
      note: byId.get(batch.id)?.note ?? '',
      endedAt: null,
      version: byId.get(batch.id)?.version ?? 1,
    }))
    .sort((a, b) => (a.hatchedOn < b.hatchedOn ? 1 : -1))
}

/** The book's number; without a sampled count there is no interval to give. */
function numberNow(snapshot: RoomSnapshot, batch: RoomSnapshot['batches'][number]): LarvalBatch['numberNow'] {
  const { now } = batchNumbers(snapshot, batch)
  return now === null ? null : { estimate: now, lower: null, upper: null }
}

export async function getLarvalBatchInRoom(scope: Scope, batchId: Id): Promise<LarvalBatch> {
  const batch = (await listLarvalBatchesInRoom(scope)).find((each) => each.id === batchId)
  if (!batch) throw notFound('larval batch')
  return batch
}
