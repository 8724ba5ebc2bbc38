import type { Culture, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { endLinksOf } from '../feed-links/end-links-of.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { endSubject } from '../work/subject-row.ts'
import { assertFresh } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { getCultureInRoom } from './culture-view.ts'

/** Ends a culture (crashed, restarted, given up); batches fed from it are no longer. */
export async function endCulture({
  ctx,
  roomId,
  cultureId,
  input,
}: {
  ctx: Context
  roomId: Id
  cultureId: Id
  input: { reason: string; version: number }
}): Promise<Culture> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const before = await getCultureInRoom(work, cultureId)
    assertFresh(before, input.version, before.name)
    await endLinksOf(work, { cultureId })
    await endSubject(work, { id: cultureId, reason: input.reason })
    await replanRoom(work, `${before.name} was ended`)
    return getCultureInRoom(work, cultureId)
  })
}
