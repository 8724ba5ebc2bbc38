import type { Id, JuvenileGroup } from '@fryward/shared'
import type { Context } from '../context.ts'
import { endSubject } from '../frame/subject-row.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getJuvenileGroupInRoom } from './juvenile-group-view.ts'

/** Ends a group: all placed, kept, culled or lost. */
export async function endJuvenileGroup({
  ctx,
  roomId,
  groupId,
  input,
}: {
  ctx: Context
  roomId: Id
  groupId: Id
  input: { reason: string; version: number }
}): Promise<JuvenileGroup> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getJuvenileGroupInRoom(work, groupId)
      assertFresh(before, input.version, before.name)
      await endSubject(work, { id: groupId, reason: input.reason })
    },
    (work) => getJuvenileGroupInRoom(work, groupId),
  )
}
