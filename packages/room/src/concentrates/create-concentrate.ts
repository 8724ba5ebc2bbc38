import type { Concentrate, Id, NewConcentrate } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { getConcentrateInRoom } from './concentrate-view.ts'

export async function createConcentrate({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: NewConcentrate
}): Promise<Concentrate> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const id = await insertConcentrate(work, input)
      return id
    },
    getConcentrateInRoom,
  )
}

export async function insertConcentrate(work: Work, input: NewConcentrate): Promise<Id> {
  const id = uuidv7()
  await work.tx.concentrate.create({
    data: {
      roomId: work.roomId,
      id,
      name: input.name,
      cellsPerMl: input.cellsPerMl,
      openedOn: input.openedOn ? toDateColumn(input.openedOn) : null,
      useBy: input.useBy ? toDateColumn(input.useBy) : null,
      createdAt: work.ctx.now,
    },
  })
  work.audit({ action: 'concentrate.create', detail: { concentrateId: id, ...input }, why: `${input.name} was added` })
  return id
}
