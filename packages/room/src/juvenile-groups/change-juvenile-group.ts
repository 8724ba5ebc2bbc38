import type { ChangeJuvenileGroupSchema, Id, JuvenileGroup } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { assertTank } from '../pairs/create-pair.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { changeSubject } from '../work/subject-row.ts'
import { assertFresh, definedFields } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { getJuvenileGroupInRoom } from './juvenile-group-view.ts'

type Input = { ctx: Context; roomId: Id; groupId: Id; input: z.infer<typeof ChangeJuvenileGroupSchema> }

export async function changeJuvenileGroup({ ctx, roomId, groupId, input }: Input): Promise<JuvenileGroup> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const before = await getJuvenileGroupInRoom(work, groupId)
    assertFresh(before, input.version, before.name)
    const { name, note, tankId } = input
    if (tankId !== undefined) await assertTank(work, tankId)
    await changeSubject(work, { id: groupId, name, note })
    if (tankId !== undefined)
      await work.tx.juvenileGroup.update({ where: { roomId_id: { roomId, id: groupId } }, data: { tankId } })
    work.audit({ action: 'juvenile_group.change', subjectId: groupId, detail: definedFields({ name, note, tankId }) })
    await replanRoom(work, `${before.name} was changed`)
    return getJuvenileGroupInRoom(work, groupId)
  })
}
