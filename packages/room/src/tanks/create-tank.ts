import type { Id, NewTank, Tank } from '@fryward/shared'
import type { Context } from '../context.ts'
import { insertSubject } from '../frame/subject-row.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { getTankInRoom } from './tank-view.ts'

export async function createTank({ ctx, roomId, input }: { ctx: Context; roomId: Id; input: NewTank }): Promise<Tank> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const id = await insertTank(work, input)
      return id
    },
    getTankInRoom,
  )
}

export async function insertTank(work: Work, { name, note, ...tank }: NewTank): Promise<Id> {
  const id = await insertSubject(work, { kind: 'tank', name, note })
  await work.tx.tank.create({ data: { roomId: work.roomId, id, ...tank } })
  work.audit({ action: 'tank.create', subjectId: id, detail: { name, ...tank }, why: `${name} was added` })
  return id
}
