import type { Id, Pair } from '@fryward/shared'
import type { Context } from '../context.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { endSubject } from '../work/subject-row.ts'
import { assertFresh } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { getPairInRoom } from './pair-view.ts'

export async function endPair({
  ctx,
  roomId,
  pairId,
  input,
}: {
  ctx: Context
  roomId: Id
  pairId: Id
  input: { reason: string; version: number }
}): Promise<Pair> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const before = await getPairInRoom(work, pairId)
    assertFresh(before, input.version, before.name)
    await endSubject(work, { id: pairId, reason: input.reason })
    await replanRoom(work, `${before.name} was ended`)
    return getPairInRoom(work, pairId)
  })
}
