import type { ChangeTankSchema, Id, Tank } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertWarmEnough, findInhabitant } from './inhabitant.ts'
import { getTankInRoom } from './tank-view.ts'

export async function changeTank({
  ctx,
  roomId,
  tankId,
  input,
}: {
  ctx: Context
  roomId: Id
  tankId: Id
  input: z.infer<typeof ChangeTankSchema>
}): Promise<Tank> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getTankInRoom(work, tankId)
      assertFresh(before, input.version, before.name)
      const { name, note, version: _version, ...fields } = input
      if (fields.temperatureC !== undefined && (await findInhabitant(work, tankId)))
        assertWarmEnough({ name: before.name, temperatureC: fields.temperatureC }, 'temperatureC')
      await changeSubject(work, { id: tankId, name, note })
      await work.tx.tank.update({ where: { roomId_id: { roomId, id: tankId } }, data: definedFields(fields) })
      work.audit({
        action: 'tank.change',
        subjectId: tankId,
        detail: definedFields({ name, note, ...fields }),
        why: `${before.name} was changed`,
      })
    },
    (work) => getTankInRoom(work, tankId),
  )
}
