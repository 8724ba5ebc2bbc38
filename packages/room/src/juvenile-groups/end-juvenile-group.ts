import type { Id, JuvenileGroup } from '@fryward/shared'
import type { Context } from '../context.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { endSubject } from '../work/subject-row.ts'
import { assertFresh } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
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
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const before = await getJuvenileGroupInRoom(work, groupId)
    assertFresh(before, input.version, before.name)
    await endSubject(work, { id: groupId, reason: input.reason })
    await replanRoom(work, `${before.name} was ended`)
    return getJuvenileGroupInRoom(work, groupId)
  })
}
