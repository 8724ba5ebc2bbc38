import type { SnapshotCulture } from '@fryward/husbandry'
import type { CultureOutlook, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { readStateAround } from '../state/read-state.ts'
import { cultureOutlook } from './culture-outlook.ts'
import { endedCultureOutlook } from './ended-culture-outlook.ts'

type Query = { harvestShare?: number | undefined; days: number }

/** Density behind and ahead of now, under a stated daily harvest; of a culture that has ended, what lies behind. */
export async function getCultureOutlook({
  ctx,
  roomId,
  cultureId,
  query,
}: {
  ctx: Context
  roomId: Id
  cultureId: Id
  query: Query
}): Promise<CultureOutlook> {
  return readInRoom({ ctx, roomId }, async ({ tx, state }) => {
    const row = await tx.culture.findUnique({
      where: { roomId_id: { roomId, id: cultureId } },
      include: { subject: true },
    })
    if (!row) throw notFound('culture')
    const { subject, roomId: _roomId, startedAt, ...fields } = row
    const culture: SnapshotCulture = { ...fields, name: subject.name, startedAt: startedAt.toISOString() }
    const endedAt = subject.endedAt?.toISOString() ?? null
    if (endedAt === null) return cultureOutlook({ ...(await state()), culture, now: ctx.now, query })
    const { snapshot } = await readStateAround({ tx, roomId, at: endedAt })
    return endedCultureOutlook({ snapshot, culture, endedAt, reason: subject.endReason })
  })
}
