import type { ChangeConcentrateSchema, Concentrate, Id } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getConcentrateInRoom } from './concentrate-view.ts'

export async function changeConcentrate({
  ctx,
  roomId,
  concentrateId,
  input,
}: {
  ctx: Context
  roomId: Id
  concentrateId: Id
  input: z.infer<typeof ChangeConcentrateSchema>
}): Promise<Concentrate> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getConcentrateInRoom(work, concentrateId)
      assertFresh(before, input.version, before.name)
      const { version: _version, openedOn, useBy, ...fields } = input
      await work.tx.concentrate.update({
        where: { roomId_id: { roomId, id: concentrateId } },
        data: {
          ...definedFields(fields),
          openedOn: dateOrSame(openedOn),
          useBy: dateOrSame(useBy),
          version: { increment: 1 },
        },
      })
      work.audit({
        action: 'concentrate.change',
        detail: { concentrateId, ...definedFields({ ...fields, openedOn, useBy }) },
        why: `${before.name} was changed`,
      })
    },
    (work) => getConcentrateInRoom(work, concentrateId),
  )
}

const dateOrSame = (date: string | null | undefined): Date | null | undefined =>
  date ? toDateColumn(date) : date === null ? null : undefined
