import type { ChangeRoom, Id, Room } from '@fryward/shared'
import type { Context } from '../context.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { changeSubject } from '../work/subject-row.ts'
import { assertFresh, definedFields } from '../work/versioned.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { getRoomRow } from './room-view.ts'

export async function changeRoom({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: ChangeRoom
}): Promise<Room> {
  return writeInRoom({ ctx, roomId, permission: 'own' }, async (work) => {
    assertFresh(await getRoomRow(work), input.version, 'The room')
    const { version: _version, ...fields } = input
    await work.tx.room.update({ where: { id: roomId }, data: { ...definedFields(fields), version: { increment: 1 } } })
    if (fields.name !== undefined) await changeSubject(work, { id: roomId, name: fields.name })
    work.audit({ action: 'room.change', subjectId: roomId, detail: definedFields(fields) })
    await replanRoom(work, 'the room was changed')
    return getRoomRow(work)
  })
}
