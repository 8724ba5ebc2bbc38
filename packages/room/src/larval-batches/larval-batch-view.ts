import { batchNumbers, careOf, dayOfLife, isBatchStanding, localDate, type RoomSnapshot } from '@fryward/husbandry'
import type { Id, LarvalBatch } from '@fryward/shared'
import { fromDateColumn } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'
import { closedPastOf } from '../state/closed-past.ts'

/** Ended batches stay readable like every ended thing; a batch whose hatch was struck out never was. */
export async function listLarvalBatchesInRoom(scope: Scope): Promise<LarvalBatch[]> {
  const state = await scope.state()
  const { snapshot } = state
  const past = await closedPastOf(scope, state)
  const today = localDate({ timeZone: snapshot.room.timeZone, at: scope.ctx.now })
  const rows = await scope.tx.larvalBatch.findMany({
    where: { roomId: scope.roomId },
    include: { subject: true, clutches: { orderBy: { clutchId: 'asc' } } },
    orderBy: [{ hatchedOn: 'desc' }, { id: 'desc' }],
  })
  return rows.flatMap((row) => {
    const batch = {
      id: row.id,
      name: row.subject.name,
      species: row.species,
      tankId: row.tankId,
      clutchIds: row.clutches.map((clutch) => clutch.clutchId),
      hatchedOn: fromDateColumn(row.hatchedOn),
    }
    if (!isBatchStanding(row.subject.endedAt ? past : snapshot, batch)) return []
    const { endedAt, note, version } = row.subject
    const lastDay = endedAt ? localDate({ timeZone: snapshot.room.timeZone, at: endedAt.toISOString() }) : today
    return [
      {
        ...batch,
        care: careOf(batch),
        // As the rules and the species' profiles count: day 0 is the morning after the hatch night.
        ageDays: Math.max(0, dayOfLife(batch, lastDay)),
        numberNow: endedAt ? null : numberNow(snapshot, batch),
        note,
        endedAt: endedAt?.toISOString() ?? null,
        version,
      },
    ]
  })
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
