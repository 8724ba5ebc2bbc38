import type { ChangeJuvenileGroupSchema, Id, JuvenileGroup } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertTank } from '../pairs/create-pair.ts'
import { getJuvenileGroupInRoom } from './juvenile-group-view.ts'

type Input = { ctx: Context; roomId: Id; groupId: Id; input: z.infer<typeof ChangeJuvenileGroupSchema> }

export async function changeJuvenileGroup({ ctx, roomId, groupId, input }: Input): Promise<JuvenileGroup> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getJuvenileGroupInRoom(work, groupId)
      assertFresh(before, input.version, before.name)
      const { name, note, tankId } = input
      if (tankId !== undefined) await assertTank(work, tankId)
      await changeSubject(work, { id: groupId, name, note })
      if (tankId !== undefined)
        await work.tx.juvenileGroup.update({ where: { roomId_id: { roomId, id: groupId } }, data: { tankId } })
      work.audit({
        action: 'juvenile_group.change',
        subjectId: groupId,
        detail: definedFields({ name, note, tankId }),
        why: `${before.name} was changed`,
      })
    },
    (work) => getJuvenileGroupInRoom(work, groupId),
  )
}
