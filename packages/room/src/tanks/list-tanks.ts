import type { Id, Tank } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toTank } from './tank-view.ts'

export async function listTanks({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Tank[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    (await tx.tank.findMany({ where: { roomId }, include: { subject: true }, orderBy: { id: 'asc' } })).map(toTank),
  )
}
