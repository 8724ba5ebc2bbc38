import { HatchDataSchema, type Id } from '@fryward/shared'
import { endLinksOf } from '../feed-links/end-links-of.ts'
import { endSubject } from '../frame/subject-row.ts'
import type { Work } from '../frame/write-in-room.ts'

/**
 * Batches that came into being with these hatches go with them when they are struck out: they eat from no culture and fill
 * no tank.
 */
export async function takeBackBatches(work: Work, hatches: { data: unknown }[], reason: string): Promise<void> {
  for (const batchId of batchesOf(hatches)) {
    // Larvae of a second night had joined a batch that stands on its first.
    if (await stands(work, batchId)) continue
    const batch = await work.tx.subject.findUnique({ where: { roomId_id: { roomId: work.roomId, id: batchId } } })
    if (!batch || batch.endedAt) continue
    const links = await endLinksOf(work, { batchId })
    await endSubject(work, { id: batchId, reason, how: 'taken back', detail: { links, withItsHatch: true } })
  }
}

export const batchesOf = (hatches: { data: unknown }[]): Id[] => [
  ...new Set(hatches.flatMap(({ data }) => HatchDataSchema.parse(data).batchId ?? [])),
]

const stands = async ({ tx, roomId }: Work, batchId: Id): Promise<boolean> =>
  (await tx.fact.count({
    where: { roomId, kind: 'hatch', struckAt: null, data: { path: ['batchId'], equals: batchId } },
  })) > 0
