import type { Id, Pair } from '@fryward/shared'
import type { Context } from '../context.ts'
import { endSubject } from '../frame/subject-row.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getKeptPair, getPairInRoom } from './pair-view.ts'

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
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getKeptPair(work, pairId)
      assertFresh(before, input.version, before.name)
      await endSubject(work, { id: pairId, reason: input.reason })
    },
    (work) => getPairInRoom(work, pairId),
  )
}
