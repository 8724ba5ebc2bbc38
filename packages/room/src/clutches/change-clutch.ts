import type { ChangeClutchSchema, Clutch, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { changeSubject } from '../work/subject-row.ts'
import { assertFresh, definedFields } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { getClutchInRoom } from './clutch-view.ts'

/** What is meant with a clutch: raise all, part, or leave it with its parents. */
export async function changeClutch({
  ctx,
  roomId,
  clutchId,
  input,
}: {
  ctx: Context
  roomId: Id
  clutchId: Id
  input: z.infer<typeof ChangeClutchSchema>
}): Promise<Clutch> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const before = await getClutchInRoom(work, clutchId)
    assertFresh(before, input.version, before.name)
    await changeSubject(work, { id: clutchId, name: input.name })
    if (input.intent !== undefined)
      await work.tx.clutch.update({ where: { roomId_id: { roomId, id: clutchId } }, data: { intent: input.intent } })
    work.audit({
      action: 'clutch.change',
      subjectId: clutchId,
      detail: definedFields({ name: input.name, intent: input.intent }),
    })
    await replanRoom(work, `${before.name} was changed`)
    return getClutchInRoom(work, clutchId)
  })
}
